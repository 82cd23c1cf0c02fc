import { CoreError } from './core'

/** Names and sentences of `mvw_status` and `mvw_teach_status`, by value. */
const STATUSES: Record<number, { code: string; message: string }> = {
  [-1]: { code: 'core/argument', message: 'The core was given a count out of its range.' },
  [-2]: {
    code: 'core/version',
    message: 'The model was made for another version of the core: train it again.',
  },
  [-3]: {
    code: 'core/rate',
    message:
      'The output data rate is more than 5 % off the one the model was trained for: set that rate or train for this one.',
  },
  [-4]: {
    code: 'core/range',
    message:
      'A sensitivity is more than 1 % off the one the model was trained for: set that range or train for this one.',
  },
  [-5]: {
    code: 'core/model',
    message: 'A field of the model is out of its range: train it again.',
  },
  [-6]: { code: 'core/memory', message: 'A buffer given to the core is too small for the model.' },
  [-19]: { code: 'teach/full', message: 'No slot for a taught gesture is free: forget one first.' },
  [-20]: {
    code: 'teach/model',
    message:
      'Only a model that compares with templates alone can be taught: choose templates on Prop and train again.',
  },
  [-7]: { code: 'core/bytes', message: 'The model is cut short or damaged: train it again.' },
}

/** @throws CoreError when the status is negative. */
export function checkStatus(status: number): number {
  if (status >= 0) return status
  const known = STATUSES[status]
  throw new CoreError(
    status,
    known?.code ?? 'core/unknown',
    known?.message ?? `The core answered with the unknown status ${status}.`,
  )
}
