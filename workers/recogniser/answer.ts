import { CoreError } from '../../src/shared/core/core'
import { fail, type Result } from '../../src/shared/model/result'

/** The core's own refusals as failures; whatever else is thrown is a bug and rejects the call. */
export async function answer<T>(work: () => Promise<Result<T>>): Promise<Result<T>> {
  try {
    return await work()
  } catch (error) {
    if (error instanceof CoreError) return fail(error.code, error.message)
    throw error
  }
}
