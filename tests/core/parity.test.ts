import { afterAll, beforeAll, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import type { WasmCore } from '../../src/shared/core/create-core'
import { encodeModel } from '../../src/shared/format/model-bytes'
import type { RecogniserModel } from '../../src/shared/model/recogniser-model'
import { createRandom, type Random } from '../../src/shared/statistics/random'
import { describeWithTools } from '../support/tools'
import {
  concat,
  eventLine,
  exampleKernel,
  exampleModel,
  gesture,
  movement,
  ONE_G,
  rest,
} from './example-model'
import { HostBuild } from './host-build'

/** Rest and movements of all lengths and sizes, some beyond the model's limits, some clipped. */
function stream(random: Random, movements: number): Int16Array {
  const parts: Int16Array[] = []
  for (let i = 0; i < movements; i++) {
    const angle = random.next() * 2 * Math.PI
    const down: [number, number, number] = [
      Math.round(ONE_G * Math.cos(angle)),
      random.integer(3) === 0 ? ONE_G : 0,
      Math.round(ONE_G * Math.sin(angle)),
    ]
    parts.push(rest(2 + random.integer(40), down, random))
    parts.push(movement(4 + random.integer(70), down, 300 * 2 ** random.integer(8), random))
  }
  return concat(...parts, rest(20, [0, 0, ONE_G], random))
}

function noise(count: number, random: Random): Int16Array {
  return Int16Array.from({ length: count * 6 }, () => random.integer(65536) - 32768)
}

/** The corners of the settings: every scale mode, cost, masks, no alignment, shortest and longest. */
const MODELS: [string, RecogniserModel][] = [
  ['as usual', exampleModel()],
  [
    'accelerometer only, by channel, absolute cost',
    exampleModel({
      normaliser: { channelMask: 0b111, scaleMode: 2, length: 33 },
      cost: 0,
      rollAlign: false,
    }),
  ],
  [
    'gyroscope only, fixed scale, no centring',
    exampleModel({
      normaliser: { channelMask: 0b111000, centreMask: 0, scaleMode: 0, length: 4 },
      band: 0,
      longAxis: 0,
    }),
  ],
  [
    'one channel, longest points, widest band, margin',
    exampleModel({
      normaliser: { channelMask: 0b010000, length: 128, gain: [1, 127, 1, 127, 127, 127] },
      band: 127,
      longAxis: 2,
      marginPercent: 200,
    }),
  ],
  [
    'most sensitive segmenter, longest segment, smoothed',
    exampleModel({
      segmenter: {
        accelWeight: 1023,
        gyroWeight: 1023,
        onThreshold: 1,
        offThreshold: 1,
        onHold: 1,
        offHold: 1,
        minLength: 2,
        maxLength: 1023,
        preRoll: 255,
        refractory: 0,
        accelLag: 16,
        smoothShift: 6,
        restShift: 8,
      },
    }),
  ],
  [
    'all channels, kernel features beside templates',
    exampleModel({
      normaliser: { length: 24, channelMask: 0x1fff, gravityGain: 40 },
      kernel: exampleKernel(24, 13),
    }),
  ],
  [
    'levelled channels by their own size, squared cost, two pools',
    exampleModel({
      normaliser: { length: 128, channelMask: 0x1fc0, scaleMode: 2, gravityGain: 127 },
      kernel: exampleKernel(128, 7, { pools: 2, logWeight: 65535 }),
      longAxis: 0,
    }),
  ],
  [
    'kernel features alone, extreme weights and bases',
    exampleModel({
      normaliser: { length: 4, channelMask: 0b111001 },
      gestures: ['raise', 'swing', 'ring'].map((name) => gesture(name, 100_000, [])),
      kernel: exampleKernel(4, 4, { logWeight: 0, bases: [-(2 ** 30), 2 ** 30, 5000] }, 300),
    }),
  ],
  [
    'shortest segment',
    exampleModel({
      segmenter: { minLength: 2, maxLength: 4, preRoll: 0, onHold: 1, offHold: 255, restShift: 1 },
      normaliser: { floor: [1, 1] },
    }),
  ],
]

let core: WasmCore
beforeAll(async () => {
  core = await loadCoreForNode()
})

for (const compiler of ['gcc', 'clang'] as const)
  describeWithTools(`core built by ${compiler} under sanitizers`, [compiler], () => {
    let host: HostBuild
    beforeAll(() => {
      host = new HostBuild(compiler, [
        '-O1',
        '-g',
        '-fsanitize=address,undefined',
        '-fno-sanitize-recover',
      ])
    })
    afterAll(() => host?.dispose())

    for (const [name, model] of MODELS) {
      it(`gives the events of the WebAssembly build on movements: ${name}`, () => {
        const bytes = encodeModel(model)
        const samples = stream(createRandom(name.length), 60)
        core.load(bytes)
        const events = core.push(samples)
        expect(events.length).toBeGreaterThan(0)
        expect(host.run(bytes, samples, 'push')).toEqual(events.map(eventLine))
      })
      it(`gives its energy and phase at every sample of full-range noise: ${name}`, () => {
        const bytes = encodeModel(model)
        const samples = noise(3000, createRandom(7))
        const trace = { energy: new Uint32Array(3000), phase: new Uint8Array(3000) }
        core.load(bytes)
        core.push(samples, trace)
        const lines = Array.from(trace.energy, (energy, i) => `${energy} ${trace.phase[i]}`)
        expect(host.run(bytes, samples, 'trace')).toEqual(lines)
      })
      it(`gives its answer and query on segments already cut: ${name}`, () => {
        const bytes = encodeModel(model)
        const random = createRandom(9)
        core.load(bytes)
        for (const count of [2, 3, model.normaliser.length, model.normaliser.length + 1, 1023]) {
          const samples = noise(count + 1, random)
          const event = core.classify(samples.subarray(6), samples.subarray(0, 3))
          const [line, query] = host.run(bytes, samples, 'classify')
          expect(line).toBe(eventLine(event))
          expect(query?.trim()).toBe(core.query().join(' '))
        }
      })
    }

    it('survives the int16 extremes in every combination of rest and jump', () => {
      const bytes = encodeModel(exampleModel())
      const level = (value: number, count: number) => new Int16Array(count * 6).fill(value)
      const samples = concat(
        level(-32768, 20),
        level(32767, 1),
        level(-32768, 20),
        level(32767, 30),
        level(-32768, 30),
        level(0, 20),
        level(32767, 70),
        level(0, 20),
      )
      core.load(bytes)
      expect(host.run(bytes, samples, 'push')).toEqual(core.push(samples).map(eventLine))
    })

    it('refuses boards that do not fit, and damaged models, with the same status', () => {
      const model = encodeModel(exampleModel())
      const init = (rate: number, accel: number, gyro: number) =>
        host.run(model, null, 'init', `${rate}`, `${accel}`, `${gyro}`)[0]
      expect(init(50_000, 244_140, 35_000_000)).toBe('init 0')
      expect(init(52_000, 244_000, 35_000_000)).toBe('init 0')
      expect(init(53_000, 244_140, 35_000_000)).toBe('init -3')
      expect(init(47_000, 244_140, 35_000_000)).toBe('init -3')
      expect(init(50_000, 488_281, 35_000_000)).toBe('init -4')
      // The nominal range is the same, the sensitivity is not: range / 32768 against the data sheet.
      expect(init(50_000, 244_140, 30_517_578)).toBe('init -4')
      expect(host.run(model.slice(0, -1), null, 'push')).toEqual(['read -7'])
    })
  })
