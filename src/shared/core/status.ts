import { CORE_STATUS } from '../words/en/core-status'
import { CoreError } from './core'

/** Names and sentences of `mvw_status` and `mvw_teach_status`, by value. */
const STATUSES: Record<number, { code: string; message: string }> = {
  [-1]: { code: 'core/argument', message: CORE_STATUS.argument },
  [-2]: {
    code: 'core/version',
    message: CORE_STATUS.otherVersion,
  },
  [-3]: {
    code: 'core/rate',
    message: CORE_STATUS.rate,
  },
  [-4]: {
    code: 'core/range',
    message: CORE_STATUS.sensitivity,
  },
  [-5]: {
    code: 'core/model',
    message: CORE_STATUS.modelField,
  },
  [-6]: { code: 'core/memory', message: CORE_STATUS.buffer },
  [-19]: { code: 'teach/full', message: CORE_STATUS.teachFull },
  [-20]: {
    code: 'teach/model',
    message: CORE_STATUS.teachKernels,
  },
  [-7]: { code: 'core/bytes', message: CORE_STATUS.modelBytes },
}

/** @throws CoreError when the status is negative. */
export function checkStatus(status: number): number {
  if (status >= 0) return status
  const known = STATUSES[status]
  throw new CoreError(
    status,
    known?.code ?? 'core/unknown',
    known?.message ?? CORE_STATUS.unknown(status),
  )
}
