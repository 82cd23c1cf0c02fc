import type { MotionStatus } from '../sensors/motion-source'
import { fail, ok, type Result } from '../shared/model/result'
import { RECORDING } from '../shared/words/en/recording'
import type { RecordPhase } from './types'

const NOT_RUNNING: Record<Exclude<MotionStatus, 'running'>, string> = {
  stopped: RECORDING.notStarted,
  starting: RECORDING.starting,
  denied: RECORDING.denied,
  insecure: RECORDING.insecure,
  'no-sensor': RECORDING.noSensor,
  lost: RECORDING.lost,
}

/** Whether a recording can begin, and why not. */
export function checkReady(status: MotionStatus, phase: RecordPhase): Result<null> {
  if (status !== 'running') return fail('record/no-readings', NOT_RUNNING[status])
  if (phase === 'idle') return ok(null)
  return fail('record/busy', RECORDING.busy)
}
