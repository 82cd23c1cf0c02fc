import type { MotionStatus } from '../sensors/motion-source'
import { fail, ok, type Result } from '../shared/model/result'
import type { RecordPhase } from './types'

const NOT_RUNNING: Record<Exclude<MotionStatus, 'running'>, string> = {
  stopped: 'The sensors are not started: tap to start them.',
  starting: 'The sensors are just starting: try again in a second.',
  denied: 'The browser does not give out motion readings: allow them in its site settings.',
  insecure: 'Motion readings need HTTPS or localhost: open the page by its https address.',
  'no-sensor': 'No motion readings come on this device: use a phone, or the simulated one.',
  lost: 'The motion readings stopped coming: bring the page to the front, or start it again.',
}

/** Whether a recording can begin, and why not. */
export function checkReady(status: MotionStatus, phase: RecordPhase): Result<null> {
  if (status !== 'running') return fail('record/no-readings', NOT_RUNNING[status])
  if (phase === 'idle') return ok(null)
  return fail('record/busy', 'Something is being recorded already: stop it first.')
}
