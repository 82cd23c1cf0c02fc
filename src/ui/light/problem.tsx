import type { Failure } from '../../shared/model/result'
import { LIGHT_EFFECT } from '../../shared/words/en/light-effect'
import { Notice } from '../common'

/** What is wrong, in words, beside the field that it is about. */
export function Problem({ failure, of }: { failure: Failure | null; of: string }) {
  if (failure?.code !== of) return null
  return (
    <Notice tone="trouble" live>
      <p>{LIGHT_EFFECT.stillInUse(failure.message)}</p>
    </Notice>
  )
}
