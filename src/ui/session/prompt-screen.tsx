import { useEffect, useRef } from 'preact/hooks'
import type { Prompt } from '../../shared/collect/plan'
import { progressOf } from '../../shared/collect/session-progress'
import { currentPrompt } from '../../shared/collect/session-run'
import { COMMON } from '../../shared/words/en/common'
import { SESSION_RUN } from '../../shared/words/en/session-run'
import {
  aboutMinutes,
  countDownText,
  doubtWords,
  holdWords,
  promptName,
  promptWords,
} from '../../shared/words/en/session-words'
import type { SessionPhase, SessionRunner } from '../../state/session'
import { Mark, useApp } from '../common'
import { SensorWords } from '../record/sensor-start'
import { Demonstration } from './demonstration'
import { PhaseLine } from './phase-line'
import { PromptFoot } from './prompt-foot'
import { SimulatedMoves } from './simulated-moves'

/** One prompt, as large as the phone allows: what to do, how it stands, one button. */
export function PromptScreen({ runner }: { runner: SessionRunner }) {
  const { motion } = useApp()
  const run = runner.run.value
  const phase = runner.phase.value
  const prompt = currentPrompt(run)
  if (prompt === null) return null
  const name = promptName(run.plan, prompt)
  const simulated = motion.kind.value === 'simulated'
  return (
    <section class={`session session-${phase.name}`} aria-label={SESSION_RUN.label}>
      <SessionHead runner={runner} />
      <div class="session-middle">
        <PromptName name={name} spoken={`${run.outcomes.length} ${name}`} />
        <PromptDetails prompt={prompt} runner={runner} phase={phase} name={name} />
        {simulated && <SimulatedMoves />}
      </div>
      <div class="session-foot">
        <p class="session-line" role="status" aria-live="assertive">
          <PhaseLine phase={phase} prompt={prompt} name={name} />
        </p>
        <Countdown runner={runner} />
        <PromptFoot runner={runner} prompt={prompt} />
      </div>
    </section>
  )
}

function SessionHead({ runner }: { runner: SessionRunner }) {
  const { motion } = useApp()
  const run = runner.run.value
  const { done, total, remainingMs } = progressOf(run)
  return (
    <header class="session-head">
      <progress value={done} max={total} aria-label={SESSION_RUN.movementsDone} />
      <p class="session-count">
        <span>{SESSION_RUN.doneOf(done, total)}</span>
        {motion.kind.value === 'simulated' && <Mark kind="simulated" />}
        <span>{SESSION_RUN.left(aboutMinutes(remainingMs))}</span>
      </p>
    </header>
  )
}

/** The heading takes the focus with each new prompt, so that a screen reader begins there. */
function PromptName({ name, spoken }: { name: string; spoken: string }) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    document.title = COMMON.documentTitle(name)
    if (document.activeElement === document.body) heading.current?.focus({ preventScroll: true })
  }, [spoken, name])
  return (
    <h1 ref={heading} tabIndex={-1} class="session-name">
      {name}
    </h1>
  )
}

interface DetailsProps {
  prompt: Prompt
  runner: SessionRunner
  phase: SessionPhase
  name: string
}

/** While the prop moves nobody reads: words and picture are for before and after. */
function PromptDetails({ prompt, runner, phase, name }: DetailsProps) {
  const { plan } = runner.run.value
  if (phase.name === 'doubt') {
    return (
      <ul class="quality quality-doubt">
        {phase.words.map(({ code, text }) => (
          <li key={code}>
            {doubtWords(code)} <small>{text}</small>
          </li>
        ))}
      </ul>
    )
  }
  if (phase.name === 'not-stored') return <p class="session-trouble">{phase.message}</p>
  if (phase.name === 'no-readings') return <SensorWords />
  const gesture =
    prompt.kind === 'take'
      ? plan.gestures.find(({ gestureId }) => gestureId === prompt.gestureId)
      : undefined
  const words = promptWords(plan, prompt)
  const hold = holdWords(plan, prompt)
  return (
    <>
      {hold !== '' && <p class="session-hold">{hold}</p>}
      {gesture?.demonstration && (
        <Demonstration key={gesture.gestureId} name={name} shown={gesture.demonstration} />
      )}
      {words !== '' && <p class="session-words">{words}</p>}
    </>
  )
}

/** Not spoken: a reader that counts along would drown everything else. */
function Countdown({ runner }: { runner: SessionRunner }) {
  const { name } = runner.phase.value
  if (name !== 'resting' && name !== 'background') return null
  return (
    <p class="session-left" aria-hidden="true">
      {countDownText(runner.leftMs.value)}
    </p>
  )
}
