import './proof.css'
import { useState } from 'preact/hooks'
import type { Evaluation, Holdout } from '../../shared/model/evaluation'
import { expectationSentence } from '../../shared/present/expectation'
import { countLibrary } from '../../shared/present/library-counts'
import { PROOF } from '../../shared/words/en/proof'
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
    <Screen title={PROOF.cellTitle} back="#/proof">
      {evaluation === null || cells === null ? (
        <NextStep text={PROOF.cellIsOld} action={PROOF.goToProof} href="#/proof" />
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
      <Screen title={PROOF.title}>
        <NextStep text={PROOF.noTakes} action={PROOF.recordTakes} href="#/moves" />
      </Screen>
    )
  }
  const expected = expectationSentence(counts)
  const foot = <Foot job={job} holdout={holdout} run={() => void app.evaluate(holdout)} />
  return (
    <Screen title={PROOF.title} foot={needsFoot(job, holdout) ? foot : <AfterFoot />}>
      <p class="quiet">
        {PROOF.basis(counts.gestures.length, counts.takes, counts.testers.length)}
      </p>
      <Choice
        legend={PROOF.holdOut}
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
      <Button href="#/decide">{PROOF.toDecide}</Button>
      <Button href="#/compare">{PROOF.toCompare}</Button>
      <Button href="#/grip">{PROOF.toGrip}</Button>
      <Button href="#/report">{PROOF.toReport}</Button>
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
      <p>{PROOF.oneTester}</p>
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
      {again ? PROOF.measureAgain : PROOF.measure}
    </Button>
  )
}
