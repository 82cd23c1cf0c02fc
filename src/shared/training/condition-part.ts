import type { RecordingWithSamples } from '../model/library'
import { ok } from '../model/result'
import type { Target } from '../model/target'
import type { PartJob } from '../parts/parts'
import { type Conditioned, conditionOne } from './prepare'

/** Conditions some recordings to a target. */
export const conditionPart: PartJob<
  { target: Target },
  readonly RecordingWithSamples[],
  Conditioned[]
> = {
  open(_core, { target }) {
    return ok((recordings) => ok(recordings.map((one) => conditionOne(one, target))))
  },
}
