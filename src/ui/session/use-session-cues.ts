import { effect } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { SessionRunner } from '../../state/session'
import { type Cue, cue } from '../record/cues'

/** Begin, over, kept and doubtful are told apart by ear and hand, as the screen moves with the prop. */
const CUES: Record<string, Cue | undefined> = {
  go: 'start',
  checking: 'stop',
  good: 'cut',
  doubt: 'doubt',
  background: 'start',
  'no-readings': 'doubt',
  'not-stored': 'doubt',
}

export function useSessionCues(runner: SessionRunner): void {
  useEffect(() => {
    let before = runner.phase.peek().name
    return effect(() => {
      const { name } = runner.phase.value
      const wanted = name === before ? undefined : CUES[name]
      // Keeping a doubtful take is no end of a movement.
      const isEnd = before === 'go' || before === 'background'
      before = name
      if (wanted !== undefined && (name !== 'checking' || isEnd)) cue(wanted)
    })
  }, [runner])
}
