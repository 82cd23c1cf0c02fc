import { contentLimitHz, timingFacts } from '../conditioning/timing'
import type { FullLibrary, RecordingWithSamples } from '../model/library'
import { AXES, STANDARD_GRAVITY_MPS2 } from '../model/sample'
import { median } from '../statistics/summary'
import type { SensorLimits } from './sensor-decision'
import { ratesOf } from './settle'

/** A board's clock may be some per cent off: a rate this little above the recordings' is not beyond. */
const RATE_SLACK = 1.03
/** Readings in a row at the very same extreme, which a hand does not hold. */
const PLATEAU = 2
/** Takes in which that must be seen. */
const PLATEAU_TAKES = 2
/** Below, an extreme is no range of any sensor. */
const LEAST_RANGE_G = 1.9

/** What the takes of a library hold, and so what no sweep over them can answer. */
export function sensorLimits({ library, recordings }: FullLibrary): SensorLimits {
  const takes = recordings.filter(
    ({ recording, samples }) =>
      recording.kind === 'take' && recording.deletedAt === null && samples.tMs.length > 1,
  )
  const rates = takes.map(({ samples }) => timingFacts(samples.tMs).rateHz)
  const recordedHz = takes.length === 0 ? 0 : median(rates)
  const largest = takes.map(({ samples }) => largestMps2(samples.values))
  const largestMps = Math.max(0, ...largest)
  const steps = takes
    .map(({ recording }) => recording.device.accelStepMps2)
    .filter((step) => step > 0)
  return {
    recordedHz,
    contentHz: contentLimitHz(recordedHz, Number.POSITIVE_INFINITY),
    untriedHz: ratesOf(library.target).filter((rate) => rate > recordedHz * RATE_SLACK),
    largestG: largestMps / STANDARD_GRAVITY_MPS2,
    phoneClipG: phoneClipG(takes, largestMps),
    floorNoise: steps.length === 0 ? null : roundingNoise(median(steps), recordedHz),
    withoutGyro: takes.filter(({ recording }) => !recording.device.hasGyro).length,
  }
}

/** Rates that the recordings can answer for. */
export function answerableRates(full: FullLibrary, { untriedHz }: SensorLimits): number[] {
  return ratesOf(full.library.target).filter((rate) => !untriedHz.includes(rate))
}

/** Rounding to a step is noise of step / √12 rms, spread over half the rate; in µg/√Hz. */
function roundingNoise(stepMps2: number, rateHz: number): number {
  const rmsG = stepMps2 / Math.sqrt(12) / STANDARD_GRAVITY_MPS2
  return (rmsG / Math.sqrt(rateHz / 2)) * 1e6
}

function largestMps2(values: Float32Array): number {
  let largest = 0
  for (let at = 0; at < values.length; at++)
    if (at % AXES < 3) largest = Math.max(largest, Math.abs(values[at]!))
  return largest
}

/** Several takes stand still at one and the same extreme: the end of the recording sensor's range. */
function phoneClipG(takes: readonly RecordingWithSamples[], largestMps: number): number | null {
  if (largestMps / STANDARD_GRAVITY_MPS2 < LEAST_RANGE_G) return null
  const near = largestMps * 0.999
  const held = takes.filter(({ samples }) => holdsAt(samples.values, near)).length
  return held >= PLATEAU_TAKES ? largestMps / STANDARD_GRAVITY_MPS2 : null
}

function holdsAt(values: Float32Array, limit: number): boolean {
  for (let axis = 0; axis < 3; axis++) {
    let run = 0
    for (let at = axis; at < values.length; at += AXES) {
      run = Math.abs(values[at]!) >= limit ? run + 1 : 0
      if (run >= PLATEAU) return true
    }
  }
  return false
}
