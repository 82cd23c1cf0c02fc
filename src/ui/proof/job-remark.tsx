import { ageText } from '../../shared/words/en/age-words'
import type { Job } from '../../state/app'
import { Notice } from '../common'

export interface JobRemarkProps {
  job: Job<unknown>
}

/** Why a measurement failed, or when it was made and whether takes or settings changed since. */
export function JobRemark({ job }: JobRemarkProps) {
  if (job.state === 'failed') {
    return (
      <Notice tone="trouble" live>
        <p>{job.message}</p>
      </Notice>
    )
  }
  if (job.state !== 'done') return null
  const age = job.at === undefined ? '' : `Measured ${ageText(job.at, Date.now())}.`
  if (!job.stale) return <p class="quiet small">{age}</p>
  return (
    <Notice>
      <p>{age} Takes or settings have changed since: these figures are of the library before.</p>
    </Notice>
  )
}
