import type { CoreEvent } from '../../src/shared/core/core'
import { CORE_REASONS, CORE_ROLLS } from '../../src/shared/core/core'
import {
  channelCount,
  type ModelKernel,
  type RecogniserModel,
} from '../../src/shared/model/recogniser-model'
import { createRandom, type Random } from '../../src/shared/statistics/random'

/** Counts of one g and of 100 deg/s at the example's sensitivities. */
export const ONE_G = 4096
export const HUNDRED_DPS = 2857

type Override = { [K in keyof RecogniserModel]?: Partial<RecogniserModel[K]> | null }

/** A small valid model with random templates; parts of it replaced by `change`. */
export function exampleModel(change: Override = {}, seed = 1): RecogniserModel {
  const model: RecogniserModel = {
    rollAlign: true,
    button: false,
    board: { rateMillihertz: 50_000, accelNgPerLsb: 244_140, gyroNdpsPerLsb: 35_000_000 },
    segmenter: {
      accelWeight: 256,
      gyroWeight: 64,
      onThreshold: 1000,
      offThreshold: 500,
      onHold: 2,
      offHold: 5,
      minLength: 8,
      maxLength: 60,
      preRoll: 3,
      refractory: 4,
      accelLag: 2,
      smoothShift: 0,
      restShift: 4,
    },
    normaliser: {
      length: 16,
      channelMask: 0b111111,
      centreMask: 0b111111,
      scaleMode: 1,
      gain: [32, 32, 32, 32, 32, 32],
      gravityGain: 32,
      floor: [200, 200],
    },
    longAxis: 1,
    rollMinPercent: 26,
    band: 3,
    cost: 1,
    marginPercent: 0,
    gestures: [],
    kernel: null,
  }
  for (const key of Object.keys(change) as (keyof RecogniserModel)[]) {
    const value = change[key]
    const plain = key !== 'kernel' && typeof value === 'object' && !Array.isArray(value)
    Object.assign(model, { [key]: plain ? { ...(model[key] as object), ...value } : value })
  }
  if (model.gestures.length === 0) {
    const random = createRandom(seed)
    const values = model.normaliser.length * channelCount(model.normaliser)
    const template = () => Int8Array.from({ length: values }, () => random.integer(255) - 127)
    model.gestures = [
      gesture('raise', 400_000, [template(), template()]),
      gesture('swing', 700_000, [template()]),
      gesture('ring', 10_000, [template(), template(), template()]),
    ]
  }
  return model
}

/** Random kernel features for a model of three gestures, biases within what outputs come to. */
export function exampleKernel(
  length: number,
  channels: number,
  change: Partial<ModelKernel> = {},
  count = 20,
): ModelKernel {
  const random = createRandom(length + channels)
  const pools = change.pools ?? 3
  return {
    pools,
    logWeight: 900,
    bases: [40_000, 50_000, 60_000],
    features: Array.from({ length: count }, () => ({
      kernel: random.integer(84),
      differences: random.integer(2) === 1,
      dilation: 1 + random.integer(length - 1),
      channels: 1 + random.integer(2 ** channels - 1),
      bias: random.integer(400) - 200,
      weights: Int8Array.from({ length: pools * 3 }, () => random.integer(255) - 127),
    })),
    ...change,
  }
}

export function gesture(name: string, threshold: number, templates: Int8Array[]) {
  return { id: name, name, threshold, templates, templateTakeIds: templates.map(() => '') }
}

/** Rest with gravity `down` (counts) and a little noise. */
export function rest(count: number, down: [number, number, number], random: Random): Int16Array {
  const samples = new Int16Array(count * 6)
  for (let i = 0; i < count; i++)
    for (let axis = 0; axis < 6; axis++)
      samples[i * 6 + axis] = (axis < 3 ? down[axis]! : 0) + random.integer(9) - 4
  return samples
}

/** A movement: smooth random swings of the given size (counts) on all axes around gravity. */
export function movement(
  count: number,
  down: [number, number, number],
  size: number,
  random: Random,
): Int16Array {
  const samples = new Int16Array(count * 6)
  for (let axis = 0; axis < 6; axis++) {
    const cycles = 1 + random.next() * 3
    const phase = random.next() * 6
    for (let i = 0; i < count; i++) {
      const base = axis < 3 ? down[axis]! : 0
      const value = base + size * Math.sin(phase + (cycles * 2 * Math.PI * i) / count)
      samples[i * 6 + axis] = Math.max(-32768, Math.min(32767, Math.round(value)))
    }
  }
  return samples
}

export function concat(...parts: Int16Array[]): Int16Array {
  const whole = new Int16Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}

/** An event as the harness prints it. */
export function eventLine(event: CoreEvent): string {
  const none = 0xffffffff
  return [
    event.kind === 'gesture' ? 1 : 2,
    CORE_REASONS.indexOf(event.reason),
    CORE_ROLLS.indexOf(event.roll),
    event.gesture ?? 255,
    event.runnerUp ?? 255,
    event.start,
    event.end,
    event.distance ?? none,
    event.threshold,
    event.runnerUpDistance ?? none,
  ].join(' ')
}
