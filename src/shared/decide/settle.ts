import { INT16_MAX, INT16_MIN } from '../conditioning/counts'
import type { FullLibrary } from '../model/library'
import { AXES } from '../model/sample'
import type { SensorRange, Target } from '../model/target'
import { createRandom, type Random } from '../statistics/random'
import { sensorFamily } from '../target/presets'
import { type Prepared, prepareLibrary } from '../training/prepare'
import type { SensorSetting } from './sensor-decision'
import { withoutGyro } from './without-gyro'

/** The word of the target's sensor, bits. */
export const FULL_BITS = 16

/** Ranges of the accelerometer that the target's family has, g; smallest first. */
export function rangesOf(target: Target): readonly SensorRange[] {
  const family = sensorFamily(target.preset)
  if (family !== null) return family.accelRanges
  const { fullScale, nanoPerLsb } = target.accel
  return [2, 4, 8, 16].map((range) => ({
    fullScale: range,
    nanoPerLsb: Math.round((nanoPerLsb * range) / fullScale),
  }))
}

const CUSTOM_RATES_HZ = [12.5, 25, 50, 100, 200]

/** Output data rates of the target's family up to 208 Hz. */
export function ratesOf(target: Target): readonly number[] {
  const rates = sensorFamily(target.preset)?.ratesHz ?? CUSTOM_RATES_HZ
  return rates.filter((rate) => rate <= 208)
}

/** What the target has now, and nothing added. */
export function ownSetting(target: Target): SensorSetting {
  return {
    rateHz: target.rateHz,
    rangeG: target.accel.fullScale,
    bits: FULL_BITS,
    accelNoise: 0,
    gyroNoise: 0,
    gyro: true,
  }
}

/** The library as a board with this setting would have read it. Noise follows from take and seed. */
export function settle(full: FullLibrary, setting: SensorSetting, seed: number): Prepared {
  const { library } = full
  const target = targetWith(library.target, setting)
  const prepared = prepareLibrary({ ...full, library: { ...library, target } })
  const spoil = (counts: Int16Array, id: string) => spoiled(counts, target, setting, seed, id)
  const settled: Prepared = {
    ...prepared,
    takes: prepared.takes.map((one) => ({ ...one, counts: spoil(one.counts, one.take.id) })),
    backgrounds: prepared.backgrounds.map((one) => ({
      ...one,
      counts: spoil(one.counts, one.background.id),
    })),
  }
  return setting.gyro ? settled : withoutGyro(settled)
}

/** The target with the setting's rate and range. */
export function targetWith(target: Target, { rateHz, rangeG }: SensorSetting): Target {
  const accel = rangesOf(target).find(({ fullScale }) => fullScale === rangeG) ?? target.accel
  return { ...target, rateHz, accel }
}

/** Noise, then the coarser word: what is added below the last bit is lost with it. */
function spoiled(
  counts: Int16Array,
  target: Target,
  { accelNoise, gyroNoise, bits, rateHz }: SensorSetting,
  seed: number,
  id: string,
): Int16Array {
  if (accelNoise === 0 && gyroNoise === 0 && bits >= FULL_BITS) return counts
  const random = randomOf(seed, id)
  // Brick-wall bandwidth of half the rate: sigma = density · √bandwidth.
  const root = Math.sqrt(rateHz / 2)
  const accel = (accelNoise * 1e-6 * root) / (target.accel.nanoPerLsb * 1e-9)
  const gyro = (gyroNoise * 1e-3 * root) / (target.gyro.nanoPerLsb * 1e-9)
  const step = 2 ** Math.max(0, FULL_BITS - bits)
  return counts.map((value, at) => {
    const sigma = at % AXES < 3 ? accel : gyro
    const noisy = sigma === 0 ? value : value + sigma * random.normal()
    const rounded = step * Math.round(noisy / step)
    return Math.max(INT16_MIN, Math.min(INT16_MAX + 1 - step, rounded))
  })
}

function randomOf(seed: number, id: string): Random {
  let mixed = seed | 0
  for (let i = 0; i < id.length; i++) mixed = (Math.imul(mixed, 31) + id.charCodeAt(i)) | 0
  return createRandom(mixed)
}
