import { channelCount, type RecogniserModel } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import type { Prepared } from '../training/prepare'

const ACCEL_CHANNELS = 0b111

/** Counts with the gyroscope still. */
export function stillGyro(counts: Int16Array): Int16Array {
  return counts.map((value, at) => (at % AXES < 3 ? value : 0))
}

/** The library as a board with an accelerometer alone would have it. */
export function withoutGyro(prepared: Prepared): Prepared {
  return {
    ...prepared,
    takes: prepared.takes.map((take) => ({ ...take, counts: stillGyro(take.counts) })),
    backgrounds: prepared.backgrounds.map((one) => ({ ...one, counts: stillGyro(one.counts) })),
  }
}

/**
 * The model of such a library without the channels that are always 0: they add nothing to a distance,
 * so every answer stays and templates take half the flash. Kernel features keep their channels.
 */
export function accelerometerModel(model: RecogniserModel): RecogniserModel {
  const { normaliser } = model
  if (model.kernel !== null || normaliser.channelMask !== 0b111111) return model
  const channels = channelCount(normaliser)
  return {
    ...model,
    normaliser: { ...normaliser, channelMask: ACCEL_CHANNELS },
    gestures: model.gestures.map((gesture) => ({
      ...gesture,
      templates: gesture.templates.map((one) => one.filter((_, at) => at % channels < 3)),
    })),
  }
}
