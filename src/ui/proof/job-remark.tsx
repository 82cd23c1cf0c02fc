import { PROOF } from '../../shared/words/en/proof'
import type { Job } from '../../state/app'
import { Notice } from '../common'

export interface JobRemarkProps {
  job: Job<unknown>
}

/** Why a measurement failed, or when it was made and why its figures are not fresh. */
export function JobRemark({ job }: JobRemarkProps) {
  if (job.state === 'failed') {
    return (
      <Notice tone="trouble" live>
        <p>{job.message}</p>
      </Notice>
    )
  }
  if (job.state !== 'done') return null
  const stale = job.stale ? (job.byOther ? 'app' : 'library') : null
  const when = PROOF.measured(job.at ?? null, Date.now(), stale)
  if (!job.stale) return <p class="quiet small">{when}</p>
  return (
    <Notice>
      <p>{when}</p>
    </Notice>
  )
}
