import type { ComponentChildren } from 'preact'
import { countLibrary } from '../../shared/present/library-counts'
import { DECIDE_SCREENS } from '../../shared/words/en/decide-screens'
import type { Job } from '../../state/app'
import { Button, NextStep, Progress, Screen, useApp } from '../common'
import { JobRemark } from '../proof/job-remark'

export interface DecideScreenProps<T> {
  title: string
  job: Job<T>
  /** What is measured, in a sentence or two, while nothing is there. */
  about: string
  action: string
  run: () => void
  /** Asked for differently than what is shown: the button is offered again. */
  changed?: boolean
  /** Stands above the result, such as what to measure with. */
  settings?: ComponentChildren
  children: (value: T) => ComponentChildren
}

/** A screen around one long measurement: what it will tell, the button, progress, the result. */
export function DecideScreen<T>(props: DecideScreenProps<T>) {
  const { title, job, about, action, run, changed = false, settings, children } = props
  const { library } = useApp()
  const counts = countLibrary(library.current.value?.gestures ?? [], library.recordings.value)
  if (counts.takes === 0) {
    return (
      <Screen title={title} back="#/decide">
        <NextStep
          text={DECIDE_SCREENS.noTakes}
          action={DECIDE_SCREENS.recordOnMoves}
          href="#/moves"
        />
      </Screen>
    )
  }
  const foot =
    job.state === 'running' ? (
      <Progress progress={job.progress} cancel={job.cancel} />
    ) : job.state !== 'done' || job.stale || changed ? (
      <Button tone="amber" big wide onClick={run}>
        {job.state === 'done' ? DECIDE_SCREENS.again : action}
      </Button>
    ) : undefined
  return (
    <Screen title={title} back="#/decide" foot={foot}>
      {job.state !== 'done' && <p>{about}</p>}
      {settings}
      {job.state === 'done' && (
        <div class={job.stale ? 'decide-result decide-stale' : 'decide-result'}>
          {children(job.value)}
        </div>
      )}
      <JobRemark job={job} />
    </Screen>
  )
}
