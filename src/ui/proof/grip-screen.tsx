import { bestRemedy } from '../../shared/present/best-remedy'
import './grip.css'
import { useState } from 'preact/hooks'
import type { GripTolerance } from '../../shared/grip/grip-tolerance'
import { GRIP } from '../../shared/words/en/grip'
import {
  basisWords,
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
      <Screen title={GRIP.title} back="#/proof">
        <NextStep text={GRIP.noTakes} action={GRIP.recordTakes} href="#/moves" />
      </Screen>
    )
  }
  const foot =
    job.state === 'running' ? (
      <Progress progress={job.progress} cancel={job.cancel} />
    ) : job.state !== 'done' || job.stale ? (
      <Button tone="amber" big wide onClick={() => void app.measureGrip()}>
        {job.state === 'done' ? GRIP.measureAgain : GRIP.measure}
      </Button>
    ) : undefined
  return (
    <Screen title={GRIP.title} back="#/proof" foot={foot}>
      <p>{GRIP.lead}</p>
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
        legend={GRIP.recallWanted}
        value={limit}
        options={LIMITS.map((value) => ({ value, text: `${Number(value) * 100} %` }))}
        onChange={setLimit}
      />
      <Section title={GRIP.rollTitle}>
        <GripPlot
          label={GRIP.rollPlot}
          lines={grip.remedies.map(({ remedy, roll }) => ({ remedy, points: roll }))}
          limit={Number(limit)}
        />
      </Section>
      {grip.remedies.map((score) => (
        <section key={score.remedy} class="grip-remedy">
          <h3>
            {REMEDY_LETTERS[score.remedy]}: {REMEDY_NAMES[score.remedy]}
            {score === best && <span class="quiet small"> {GRIP.bestForCost}</span>}
          </h3>
          <p>
            {reachWords(score, Number(limit))} {costWords(score, grip.remedies)}
          </p>
        </section>
      ))}
      <Notice>{verticalWords(grip)}</Notice>
      <Section title={GRIP.tiltTitle}>
        <GripPlot
          label={GRIP.tiltPlot}
          lines={grip.remedies.map(({ remedy, tilt }) => ({ remedy, points: tilt }))}
          limit={Number(limit)}
        />
      </Section>
      <p class="quiet small">{basisWords(grip)}</p>
    </>
  )
}
