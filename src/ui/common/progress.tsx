import type { Progress as Steps } from '../../shared/protocol/recogniser'
import { COMMON } from '../../shared/words/en/common'
import { Button } from './button'

/** A long job: what is being done, how far, and the way to stop it. */
export function Progress({ progress, cancel }: { progress: Steps; cancel?: () => void }) {
  const total = Math.max(progress.total, 1)
  return (
    <div class="progress">
      <label class="progress-label">
        <span>{progress.what}</span>
        <progress value={progress.done} max={total} />
      </label>
      {cancel !== undefined && (
        <Button tone="quiet" onClick={cancel}>
          {COMMON.cancel}
        </Button>
      )}
    </div>
  )
}
