import type { TrainedModel } from '../../shared/model/evaluation'
import { matcherKind } from '../../shared/model/recogniser-model'
import type { Target } from '../../shared/model/target'
import { type ModelFact, misfits, modelFacts } from '../../shared/present/model-facts'
import { KNOWN_WORDS } from '../../shared/words/en/known-words'
import { KIND_WORDS } from '../../shared/words/en/matcher-words'
import { PROP } from '../../shared/words/en/prop'
import type { Job } from '../../state/app'
import { Button, Notice, Progress, Section, useApp } from '../common'

/** What training made, what it takes of the board, and how each figure is known. */
export function ModelSection({ target }: { target: Target }) {
  const app = useApp()
  const job = app.model.value
  return (
    <Section title={PROP.model}>
      <ModelJob job={job} train={() => void app.train()} />
      {job.state === 'done' && <Facts trained={job.value} target={target} />}
    </Section>
  )
}

function ModelJob({ job, train }: { job: Job<TrainedModel>; train: () => void }) {
  switch (job.state) {
    case 'running':
      return <Progress progress={job.progress} cancel={job.cancel} />
    case 'failed':
      return (
        <Notice tone="trouble" live>
          <p>{job.message}</p>
          <Button onClick={train}>{PROP.trainAgain}</Button>
        </Notice>
      )
    case 'none':
      return (
        <>
          <p class="quiet">{PROP.notTrained}</p>
          <Button onClick={train}>{PROP.train}</Button>
        </>
      )
    case 'done':
      return job.stale ? (
        <Notice>
          <p>{PROP.modelStale}</p>
          <Button onClick={train}>{PROP.trainAgain}</Button>
        </Notice>
      ) : null
  }
}

function Facts({ trained, target }: { trained: TrainedModel; target: Target }) {
  return (
    <>
      {misfits(trained, target).map((sentence) => (
        <Notice key={sentence} tone="trouble">
          <p>{sentence}</p>
        </Notice>
      ))}
      <dl class="facts">
        <div class="fact">
          <dt>{PROP.comparedWith}</dt>
          <dd>{KIND_WORDS[matcherKind(trained.model)]}</dd>
          {trained.choice !== '' && <dd class="fact-note">{trained.choice}</dd>}
        </div>
        {modelFacts(trained, target).map((fact) => (
          <FactRow key={fact.label} fact={fact} />
        ))}
        <div class="fact">
          <dt>{PROP.takesUsed}</dt>
          <dd>{PROP.takeCount(trained.usedTakeIds.length)}</dd>
          {trained.uncutTakeIds.length > 0 && (
            <dd class="fact-note">{PROP.leftOut(trained.uncutTakeIds.length)}</dd>
          )}
        </div>
        <div class="fact">
          <dt>{PROP.modelHash}</dt>
          <dd title={trained.hash}>{trained.hash.slice(0, 16)}</dd>
          <dd class="fact-note">{PROP.hashNote}</dd>
        </div>
      </dl>
      {trained.notes.length > 0 && (
        <ul class="notes">
          {trained.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </>
  )
}

function FactRow({ fact }: { fact: ModelFact }) {
  return (
    <div class="fact">
      <dt>{fact.label}</dt>
      <dd>
        {fact.value} <small class={`known known-${fact.known}`}>{KNOWN_WORDS[fact.known]}</small>
      </dd>
      {fact.share !== null && (
        <dd class="fact-bar" aria-hidden="true">
          <i style={{ '--share': `${Math.min(fact.share * 100, 100).toFixed(1)}%` }} />
        </dd>
      )}
      <dd class="fact-note">{fact.note}</dd>
    </div>
  )
}
