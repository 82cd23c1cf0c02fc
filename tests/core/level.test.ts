import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import type { WasmCore } from '../../src/shared/core/create-core'
import { encodeModel } from '../../src/shared/format/model-bytes'
import { exampleModel, ONE_G } from './example-model'

let core: WasmCore
beforeAll(async () => {
  core = await loadCoreForNode()
})

const RATE_HZ = 50
const COUNTS_PER_DPS = 1e9 / 35_000_000
/** Levelled channels alone, unscaled but for the gain: 64 is 1 g, 100 deg/s or 1. */
const MODEL = exampleModel({
  rollAlign: false,
  normaliser: {
    length: 64,
    channelMask: 0x1fc0,
    scaleMode: 0,
    gain: [64, 64, 64, 64, 64, 64],
    gravityGain: 64,
    floor: [ONE_G, Math.round(100 * COUNTS_PER_DPS)],
  },
})

type Vector = [number, number, number]

/** Turned right-handed by degrees about unit axis (Rodrigues). */
function turned(v: Vector, [x, y, z]: Vector, degrees: number): Vector {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  const dot = (x * v[0] + y * v[1] + z * v[2]) * (1 - c)
  return [
    v[0] * c + (y * v[2] - z * v[1]) * s + x * dot,
    v[1] * c + (z * v[0] - x * v[2]) * s + y * dot,
    v[2] * c + (x * v[1] - y * v[0]) * s + z * dot,
  ]
}

/** A board turning steadily about its own axis, pushed in the world by `push` (g, world axes). */
function turningBoard(axis: Vector, dps: number, count: number, push: (i: number) => Vector) {
  const samples = new Int16Array(count * 6)
  const up: Vector[] = []
  for (let i = 0; i < count; i++) {
    const degrees = (-dps * (i + 1)) / RATE_HZ
    const felt = push(i)
    const accel = turned([felt[0], felt[1], felt[2] + 1], axis, degrees)
    up.push(turned([0, 0, 1], axis, degrees))
    for (let k = 0; k < 3; k++) {
      samples[i * 6 + k] = Math.round(accel[k]! * ONE_G)
      samples[i * 6 + 3 + k] = Math.round(axis[k]! * dps * COUNTS_PER_DPS)
    }
  }
  return { samples, up }
}

function worstOf(query: Int8Array, channel: number, expected: (k: number) => number): number {
  return Math.max(
    ...Array.from({ length: 64 }, (_, k) => Math.abs(query[k * 7 + channel]! - expected(k))),
  )
}

const REST = Int16Array.from([0, 0, ONE_G])

describe('levelled channels', () => {
  const oblique: Vector = [0.48, 0.6, 0.64]

  it('carry gravity through a turn that the accelerometer alone would lose', () => {
    // One g of push sideways throughout: the reading never looks like gravity.
    const { samples, up } = turningBoard(oblique, 90, 64, () => [1, 0, 0])
    core.load(encodeModel(MODEL))
    core.classify(samples, REST)
    for (const axis of [0, 1, 2]) {
      // 64 is 1; 2 are 1.8 degrees after 115 degrees of turning.
      expect(worstOf(core.query(), 4 + axis, (k) => 64 * up[k]![axis]!)).toBeLessThanOrEqual(2)
    }
  })

  it('tell vertical from horizontal acceleration in every attitude', () => {
    // Never near 1 g in all, where the reading is taken for gravity.
    const lift = (i: number) => 0.3 * Math.sin(i / 5)
    const { samples } = turningBoard(oblique, 120, 64, (i) => [1, 0, lift(i)])
    core.load(encodeModel(MODEL))
    core.classify(samples, REST)
    expect(worstOf(core.query(), 0, (k) => 64 * lift(k))).toBeLessThanOrEqual(3)
    expect(worstOf(core.query(), 1, () => 64)).toBeLessThanOrEqual(3)
  })

  it('tell rotation about the vertical from the rest', () => {
    const { samples } = turningBoard(oblique, 90, 64, () => [1, 0, 0])
    core.load(encodeModel(MODEL))
    core.classify(samples, REST)
    // A turn about a fixed axis keeps its angle to the vertical: cosine 0.64, sine 0.768.
    expect(worstOf(core.query(), 2, () => 64 * 0.9 * 0.64)).toBeLessThanOrEqual(2)
    expect(worstOf(core.query(), 3, () => 64 * 0.9 * 0.768)).toBeLessThanOrEqual(2)
  })

  it('take the first readings for gravity when no rest was seen', () => {
    const still = turningBoard([1, 0, 0], 0, 64, () => [0, 0, 0]).samples
    core.load(encodeModel(MODEL))
    core.classify(still, null)
    const query = core.query()
    expect([...query.subarray(0, 7)]).toEqual([0, 0, 0, 0, 0, 0, 64])
  })

  it('come back to the accelerometer when it was wrong to begin with', () => {
    const still = turningBoard([1, 0, 0], 0, 640, () => [0, 0, 0]).samples
    core.load(encodeModel(MODEL))
    core.classify(still, Int16Array.from([0, ONE_G, 0]))
    const last = [...core.query().subarray(63 * 7)]
    expect(last.slice(4)).toEqual([0, 0, 64])
  })

  it('are nought and do no harm where the accelerometer reads nothing', () => {
    core.load(encodeModel(MODEL))
    core.classify(new Int16Array(6 * 40), null)
    expect(core.query().subarray(4, 7)).toEqual(new Int8Array(3))
  })
})
