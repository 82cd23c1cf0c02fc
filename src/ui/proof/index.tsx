import './proof.css'
import { useState } from 'preact/hooks'
import type { Evaluation, Holdout } from '../../shared/model/evaluation'
import { expectationSentence } from '../../shared/present/expectation'
import { countLibrary } from '../../shared/present/library-counts'
import { plural } from '../../shared/words/en/numbers'
import { HOLDOUT_WORDS } from '../../shared/words/en/trust'
import type { Job } from '../../state/app'
import { Button, Choice, NextStep, Notice, Progress, Screen, useApp, usePlaceStep } from '../common'
import { CellTakes } from './cell-takes'
import { JobRemark } from './job-remark'
import { Result } from './result'
import { cellsOf } from './routes'

/** Held-out evaluation; '#/proof/cell/…' and '#/proof/pair/…' show the takes behind a count. */
export function Proof({ rest }: { rest: string[] }) {
  return rest.length > 0 ? <TakesScreen rest={rest} /> : <ProofScreen />
}

function TakesScreen({ rest }: { rest: string[] }) {
  const job = useApp().evaluation.value
  const evaluation = job.state === 'done' ? job.value : null
  const cells = evaluation === null ? null : cellsOf(rest, evaluation)
  return (
    <Screen title="Takes behind the count" back="#/proof">
      {evaluation === null || cells === null ? (
        <NextStep
          text="This count is not of the measurement at hand."
          action="Go to Proof"
          href="#/proof"
        />
      ) : (
        cells.map((cell) => (
          <CellTakes key={`${cell.truth} ${cell.answer}`} evaluation={evaluation} cell={cell} />
        ))
      )}
    </Screen>
  )
}

function ProofScreen() {
  const app = useApp()
  const library = app.library.current.value
  const job = app.evaluation.value
  const counts = countLibrary(library?.gestures ?? [], app.library.recordings.value)
  const done = job.state === 'done' ? job.value.holdout : null
  const [chosen, setChosen] = useState<Holdout | null>(null)
  const holdout = chosen ?? done ?? (counts.testers.length < 2 ? 'take' : 'tester')
  if (library === null || counts.takes === 0) {
    return (
      <Screen title="Proof">
        <NextStep
          text="There are no takes to measure with."
          action="Record takes on Moves"
          href="#/moves"
        />
      </Screen>
    )
  }
  const expected = expectationSentence(counts)
  const foot = <Foot job={job} holdout={holdout} run={() => void app.evaluate(holdout)} />
  return (
    <Screen title="Proof" foot={needsFoot(job, holdout) ? foot : <AfterFoot />}>
      <p class="quiet">
        {plural('gesture', counts.gestures.length)}, {plural('take', counts.takes)},{' '}
        {plural('tester', counts.testers.length)}
      </p>
      <Choice
        legend="Hold out"
        value={holdout}
        options={[
          { value: 'tester', text: HOLDOUT_WORDS.tester.name },
          { value: 'take', text: HOLDOUT_WORDS.take.name },
        ]}
        onChange={setChosen}
      />
      <p>{HOLDOUT_WORDS[holdout].sentence}</p>
      {holdout === 'tester' && counts.testers.length < 2 && <OneTester />}
      {job.state === 'none' && expected !== null && <p class="quiet">{expected}</p>}
      <JobRemark job={job} />
      {job.state === 'done' && job.value.holdout === holdout && (
        <div class={job.stale ? 'proof-result proof-stale' : 'proof-result'}>
          <Result evaluation={job.value} stale={job.stale} />
        </div>
      )}
      <Button href="#/decide">Decide: which gestures, how much data, which sensor</Button>
      <Button href="#/compare">What changed: two models on the same takes</Button>
      <Button href="#/grip">Grip tolerance: how far may it turn in the hand?</Button>
      <Button href="#/report">Report: all of it on one page, to print or keep</Button>
    </Screen>
  )
}

/** Measured: what to do about it. */
function AfterFoot() {
  const step = usePlaceStep('proof')
  return step === null ? null : <NextStep {...step} />
}

function OneTester() {
  return (
    <Notice>
      <p>
        Every take is by one tester, so no tester can be left out. Ask a second one for takes, or
        hold out takes.
      </p>
    </Notice>
  )
}

function needsFoot(job: Job<Evaluation>, holdout: Holdout): boolean {
  return job.state !== 'done' || job.stale || job.value.holdout !== holdout
}

interface FootProps {
  job: Job<Evaluation>
  holdout: Holdout
  run: () => void
}

function Foot({ job, holdout, run }: FootProps) {
  if (job.state === 'running') return <Progress progress={job.progress} cancel={job.cancel} />
  const again = job.state === 'done' && job.value.holdout === holdout
  return (
    <Button tone="amber" big wide onClick={run}>
      {again ? 'Measure again' : 'Measure'}
    </Button>
  )
}
