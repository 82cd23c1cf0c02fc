import type { Prompt } from '../../shared/collect/plan'
import { phaseWords } from '../../shared/words/en/session-words'
import type { SessionPhase } from '../../state/session'

export interface PhaseLineProps {
  phase: SessionPhase
  prompt: Prompt
  name: string
}

/** What to do now: a few words to read at arm's length, and all of it to hear. */
export function PhaseLine({ phase, prompt, name }: PhaseLineProps) {
  const doubts = phase.name === 'doubt' ? phase.words.map(({ code }) => code) : []
  const { seen, heard } = phaseWords(phase.name, { prompt, name, doubts })
  return (
    <>
      <span class="unseen">{heard}</span> {seen}
    </>
  )
}
