import './grip.css'
import { useState } from 'preact/hooks'
import type { GripTolerance } from '../../shared/grip/grip-tolerance'
import {
  basisWords,
  bestRemedy,
  costWords,
  REMEDY_LETTERS,
  REMEDY_NAMES,
  reachWords,
  verticalWords,
} from '../../shared/words/en/grip-words'
import { Button, Choice, NextStep, Notice, Progress, Screen, Section, useApp } from '../common'
import { GripPlot } from './grip-plot'
import { JobRemark } from './job-remark'

const LIMITS = ['0.95', '0.9', '0.8'] as const
type Limit = (typeof LIMITS)[number]

/** How far the prop may turn in the hand, and what helps. */
export function GripScreen() {
  const app = useApp()
  const job = app.grip.value
  const takes = app.library.recordings.value.filter(({ kind }) => kind === 'take').length
  if (takes === 0) {
    return (
      <Screen title="Grip" back="#/proof">
        <NextStep
          text="There are no takes to turn."
          action="Record takes on Moves"
          href="#/moves"
        />
      </Screen>
    )
  }
  const foot =
    job.state === 'running' ? (
      <Progress progress={job.progress} cancel={job.cancel} />
    ) : job.state !== 'done' || job.stale ? (
      <Button tone="amber" big wide onClick={() => void app.measureGrip()}>
        {job.state === 'done' ? 'Measure again' : 'Measure grip tolerance'}
      </Button>
    ) : undefined
  return (
    <Screen title="Grip" back="#/proof" foot={foot}>
      <p>
        The same movement looks different in every grip. Here held-out takes are turned about the
        long axis, and the mounting is tilted, before anything else is done with them.
      </p>
      <JobRemark job={job} />
      {job.state === 'done' && <GripResult grip={job.value} />}
    </Screen>
  )
}

function GripResult({ grip }: { grip: GripTolerance }) {
  const [limit, setLimit] = useState<Limit>('0.9')
  const best = bestRemedy(grip, Number(limit))
  return (
    <>
      <Choice
        legend="Recall wanted"
        value={limit}
        options={LIMITS.map((value) => ({ value, text: `${Number(value) * 100} %` }))}
        onChange={setLimit}
      />
      <Section title="Turned about the long axis">
        <GripPlot
          label="Recall against roll of the grip"
          lines={grip.remedies.map(({ remedy, roll }) => ({ remedy, points: roll }))}
          limit={Number(limit)}
        />
      </Section>
      {grip.remedies.map((score) => (
        <section key={score.remedy} class="grip-remedy">
          <h3>
            {REMEDY_LETTERS[score.remedy]}: {REMEDY_NAMES[score.remedy]}
            {score === best && <span class="quiet small"> – carries furthest for its cost</span>}
          </h3>
          <p>
            {reachWords(score, Number(limit))} {costWords(score, grip.remedies)}
          </p>
        </section>
      ))}
      <Notice>{verticalWords(grip)}</Notice>
      <Section title="Mounting tilted">
        <GripPlot
          label="Recall against tilt of the mounting"
          lines={grip.remedies.map(({ remedy, tilt }) => ({ remedy, points: tilt }))}
          limit={Number(limit)}
        />
      </Section>
      <p class="quiet small">{basisWords(grip)}</p>
    </>
  )
}
