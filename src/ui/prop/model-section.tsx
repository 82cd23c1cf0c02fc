import type { TrainedModel } from '../../shared/model/evaluation'
import { matcherKind } from '../../shared/model/recogniser-model'
import type { Target } from '../../shared/model/target'
import { type ModelFact, misfits, modelFacts } from '../../shared/present/model-facts'
import { KIND_WORDS } from '../../shared/words/en/matcher-words'
import { plural } from '../../shared/words/en/numbers'
import type { Job } from '../../state/app'
import { Button, Notice, Progress, Section, useApp } from '../common'

/** What training made, what it takes of the board, and how each figure is known. */
export function ModelSection({ target }: { target: Target }) {
  const app = useApp()
  const job = app.model.value
  return (
    <Section title="Model">
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
          <Button onClick={train}>Train again</Button>
        </Notice>
      )
    case 'none':
      return (
        <>
          <p class="quiet">Not trained yet. Try and the firmware export train when needed.</p>
          <Button onClick={train}>Train</Button>
        </>
      )
    case 'done':
      return job.stale ? (
        <Notice>
          <p>Takes or settings have changed since: the figures below are of the model before.</p>
          <Button onClick={train}>Train again</Button>
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
          <dt>Compared with</dt>
          <dd>{KIND_WORDS[matcherKind(trained.model)]}</dd>
          {trained.choice !== '' && <dd class="fact-note">{trained.choice}</dd>}
        </div>
        {modelFacts(trained, target).map((fact) => (
          <FactRow key={fact.label} fact={fact} />
        ))}
        <div class="fact">
          <dt>Takes used</dt>
          <dd>{plural('take', trained.usedTakeIds.length)}</dd>
          {trained.uncutTakeIds.length > 0 && (
            <dd class="fact-note">
              {trained.uncutTakeIds.length} left out: no single movement was found in them
            </dd>
          )}
        </div>
        <div class="fact">
          <dt>Model hash</dt>
          <dd title={trained.hash}>{trained.hash.slice(0, 16)}</dd>
          <dd class="fact-note">SHA-256 of the model bytes; the firmware prints the same</dd>
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
        {fact.value} <small class={`known known-${fact.known}`}>{fact.known}</small>
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
