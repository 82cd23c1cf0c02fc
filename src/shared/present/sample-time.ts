import type { RecogniserModel } from '../model/recogniser-model'

/** Length of some samples on the target's clock, ms. */
export function samplesToMs(samples: number, model: RecogniserModel): number {
  return (samples * 1_000_000) / model.board.rateMillihertz
}
