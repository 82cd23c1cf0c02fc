import './prop.css'
import { useState } from 'preact/hooks'
import type { Library } from '../../shared/model/library'
import type { Target } from '../../shared/model/target'
import { validateTarget } from '../../shared/target/validate-target'
import { PROP } from '../../shared/words/en/prop'
import { Button, NextStep, Notice, Screen, Section, useApp, usePlaceStep } from '../common'
import { BoardForm } from './board-form'
import { BudgetSection } from './budget-section'
import { ExportSection, FirmwareButton, useExports } from './export-section'
import { LightLinks } from './light-links'
import { ModelSection } from './model-section'
import { MountingForm } from './mounting-form'
import { SafetySection } from './safety-section'
import { SelfTestSection } from './self-test-section'
import { SensorForm } from './sensor-form'
import { TrainingForm } from './training-form'

/** The hardware a library is made for, what the model takes of it, and the way out to the bench. */
export function Prop(_props: { rest: string[] }) {
  const library = useApp().library.current.value
  if (library !== null) return <LibraryProp key={library.id} library={library} />
  return (
    <Screen title={PROP.title}>
      <NextStep text={PROP.noLibrary} action={PROP.goToMoves} href="#/moves" />
    </Screen>
  )
}

function LibraryProp({ library }: { library: Library }) {
  const app = useApp()
  const exports = useExports(app)
  const step = usePlaceStep('prop')
  const [target, problem, changeTarget] = useTarget(library)
  return (
    <Screen title={PROP.title} foot={<FirmwareButton exports={exports} />}>
      {step !== null && <NextStep quiet {...step} />}
      <ExportSection exports={exports} />
      <ModelSection target={library.target} />
      <BudgetSection target={library.target} />
      {problem !== null && (
        <Notice tone="trouble" live>
          <p>{PROP.targetBefore(problem)}</p>
        </Notice>
      )}
      <Section title={PROP.sensor}>
        <SensorForm target={target} onChange={changeTarget} />
      </Section>
      <Section title={PROP.mounting}>
        <MountingForm target={target} onChange={changeTarget} />
      </Section>
      <Section title={PROP.board}>
        <Button href="#/board">{PROP.toBoard}</Button>
        <BoardForm target={target} onChange={changeTarget} />
      </Section>
      <SelfTestSection />
      <LightLinks library={library} />
      <Section title={PROP.training}>
        <TrainingForm
          settings={library.training}
          onChange={(training) => void app.library.update({ training })}
        />
      </Section>
      <SafetySection />
    </Screen>
  )
}

/**
 * The target as it is being edited. A sound one is stored at once; a wrong one stays on screen with
 * what is wrong, as fields that belong together are changed one after the other.
 */
function useTarget(library: Library): [Target, string | null, (target: Target) => void] {
  const app = useApp()
  const [draft, setDraft] = useState<Target | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const change = (next: Target) => {
    setDraft(next)
    const checked = validateTarget(next)
    setProblem(checked.ok ? null : checked.message)
    if (!checked.ok) return
    const stored = app.library.update({ target: next })
    void stored.then(() => setDraft((now) => (now === next ? null : now)))
  }
  return [draft ?? library.target, problem, change]
}
