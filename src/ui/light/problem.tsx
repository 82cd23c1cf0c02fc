import type { Failure } from '../../shared/model/result'
import { Notice } from '../common'

/** What is wrong, in words, beside the field that it is about. */
export function Problem({ failure, of }: { failure: Failure | null; of: string }) {
  if (failure?.code !== of) return null
  return (
    <Notice tone="trouble" live>
      <p>{failure.message} What was before is still in use.</p>
    </Notice>
  )
}
