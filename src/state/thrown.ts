import { type Failure, fail } from '../shared/model/result'
import { PROGRESS } from '../shared/words/en/progress'
import { StorageError } from '../storage/failure'

/** What a job threw, as its failure: reading the storage throws, and so does a mistake of the app. */
export function thrown(error: unknown): Failure {
  if (error instanceof StorageError) return fail(error.code, error.message)
  return fail('job/broke', PROGRESS.broke(String(error)))
}
