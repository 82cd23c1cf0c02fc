import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import { CoreError, TEACH_STATUSES, type TeachAnswer } from '../../src/shared/core/core'
import type { WasmCore } from '../../src/shared/core/create-core'
import { encodeModel } from '../../src/shared/format/model-bytes'
import { channelCount, type RecogniserModel } from '../../src/shared/model/recogniser-model'
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

const DOWN: [number, number, number] = [ONE_G, 0, 0]

let core: WasmCore
beforeAll(async () => {
  core = await loadCoreForNode()
})

/** The same movement after rest, with noise of its own each time. */
function performance(seed: number, noise: number, random: Random, count = 40): Int16Array {
  const clean = movement(count, DOWN, 6000, createRandom(seed))
  const moved = clean.map((value) => value + Math.round((random.next() - 0.5) * noise))
  return concat(rest(30, DOWN, random), moved, rest(20, DOWN, random))
}

/** Answers of teaching to every event in the samples. */
function answers(samples: Int16Array): TeachAnswer[] {
  const found: TeachAnswer[] = []
  for (let at = 0; at < samples.length; at += 6) {
    if (core.push(samples.subarray(at, at + 6)).length > 0) found.push(core.teachEvent())
  }
  return found
}

/** Normalised segment of a performance under the loaded model. */
function queryOf(samples: Int16Array): Int8Array {
  core.reset()
  for (let at = 0; at < samples.length; at += 6) {
    if (core.push(samples.subarray(at, at + 6)).length > 0) return core.query()
  }
  throw new Error('no movement')
}

/** A model whose gestures are three movements of the world, cut by the core itself. */
function trained(): RecogniserModel {
  const model = exampleModel({ rollAlign: false })
  core.load(encodeModel(model))
  const random = createRandom(3)
  const templates = [11, 12, 13].map((seed) => queryOf(performance(seed, 200, random)))
  const names = ['raise', 'swing', 'ring']
  return {
    ...model,
    gestures: names.map((name, i) => gesture(name, 30_000, [templates[i]!])),
  }
}

function teachable(sizes = { slots: 2, takes: 3 }): RecogniserModel {
  const model = trained()
  core.load(encodeModel(model))
  core.openTeaching(sizes)
  return model
}

describe('teaching', () => {
  it('knows a movement that was made three times, as one gesture more', () => {
    teachable()
    const random = createRandom(5)
    const strange = performance(21, 300, random)
    expect(answers(strange)[0]?.event).toMatchObject({ kind: 'reject', reason: 'far' })
    expect(core.teach(null)).toBe(3)
    const taught = [1, 2, 3].flatMap(() => answers(performance(21, 300, random)))
    expect(taught.map(({ status, count }) => [status, count])).toEqual([
      ['more', 1],
      ['more', 2],
      ['done', 3],
    ])
    const [after] = answers(performance(21, 300, random))
    expect(after).toMatchObject({ status: 'event', event: { kind: 'gesture', gesture: 3 } })
    expect(after?.event.threshold).toBe(taught[2]?.threshold)
    for (const [i, seed] of [11, 12, 13].entries()) {
      expect(answers(performance(seed, 200, random))[0]?.event).toMatchObject({ gesture: i })
    }
  })

  it('takes the segment nearest to the others and learns from distances as mvw_dtw gives them', () => {
    const model = teachable()
    const random = createRandom(8)
    const takes = [1, 2, 3].map(() => performance(22, 2500, random))
    core.teach(null)
    const { nearest, nearestDistance, spread, threshold } = takes.flatMap(answers)[2]!
    const queries = takes.map(queryOf)
    const options = { channels: channelCount(model.normaliser), band: model.band, cost: model.cost }
    const own = queries.map((a) => queries.map((b) => core.dtw(a, b, options)))
    const sums = own.map((row) => row.reduce((sum, distance) => sum + distance, 0))
    const best = sums.indexOf(Math.min(...sums))
    expect(spread).toBe(Math.max(...own[best]!))
    const others = model.gestures.map(({ templates }) =>
      Math.min(...queries.map((query) => core.dtw(query, templates[0]!, options))),
    )
    expect(nearestDistance).toBe(Math.min(...others))
    expect(nearest).toBe(others.indexOf(Math.min(...others)))
    const wished = Math.max(2 * spread, 30_000)
    expect(threshold).toBe(
      Math.max(spread, Math.min(wished, nearestDistance! - Math.floor(nearestDistance! / 4))),
    )
    const [event] = answers(performance(22, 100, random)).map((answer) => answer.event)
    expect(event?.distance).toBe(core.dtw(core.query(), queries[best]!, options))
  })

  it('takes the place of a gesture, whose own templates then count no more', () => {
    teachable()
    const random = createRandom(6)
    expect(core.teach(1)).toBe(1)
    const status = [1, 2, 3].flatMap(() => answers(performance(23, 300, random))).at(-1)?.status
    expect(status).toBe('done')
    expect(answers(performance(23, 300, random))[0]?.event).toMatchObject({ gesture: 1 })
    expect(answers(performance(12, 200, random))[0]?.event.kind).toBe('reject')
    core.forget(1)
    expect(answers(performance(12, 200, random))[0]?.event).toMatchObject({
      kind: 'gesture',
      gesture: 1,
    })
    expect(() => core.forget(1)).toThrow(CoreError)
  })

  it('refuses movements that are not alike, and those that another gesture is as near to', () => {
    teachable()
    const random = createRandom(7)
    core.teach(null)
    const unlike = [31, 32, 33].flatMap((seed) => answers(performance(seed, 300, random)))
    expect(unlike.at(-1)?.status).toBe('unlike')
    core.teach(null)
    const near = [1, 2, 3].flatMap(() => answers(performance(12, 1500, random)))
    expect(near.at(-1)).toMatchObject({ status: 'near', nearest: 1 })
    // Nothing was changed by either.
    expect(answers(performance(12, 200, random))[0]?.event).toMatchObject({ gesture: 1 })
  })

  it('passes over a movement that cannot be compared, and waits for the next', () => {
    teachable()
    const random = createRandom(9)
    core.teach(null)
    const long = performance(21, 300, random, 90)
    expect(answers(long)[0]).toMatchObject({ status: 'cut', count: 0 })
    expect(answers(performance(21, 300, random))[0]).toMatchObject({ status: 'more', count: 1 })
  })

  it('says when no slot is free, and has one again when a gesture is forgotten', () => {
    teachable({ slots: 1, takes: 2 })
    const random = createRandom(10)
    const four = core.teach(null)
    expect([1, 2].flatMap(() => answers(performance(21, 300, random))).at(-1)?.status).toBe('done')
    expect(() => core.teach(null)).toThrow('No slot')
    expect(() => core.teach(0)).toThrow('No slot')
    // Taught again, it keeps its slot.
    expect(core.teach(four)).toBe(four)
    core.cancelTeaching()
    core.forget(four)
    expect(core.teach(0)).toBe(0)
  })

  it('refuses a model with kernel features, and numbers that no gesture has', () => {
    core.load(encodeModel(exampleModel({ kernel: exampleKernel(16, 6) })))
    expect(() => core.openTeaching({ slots: 1, takes: 3 })).toThrow('templates alone')
    teachable()
    expect(() => core.teach(3)).toThrow(CoreError)
    for (const sizes of [
      { slots: 0, takes: 3 },
      { slots: 17, takes: 3 },
      { slots: 1, takes: 1 },
      { slots: 1, takes: 6 },
    ]) {
      expect(() => core.openTeaching(sizes)).toThrow(CoreError)
    }
  })
})

/** Settings at their corners, all with templates alone. */
const MODELS: [string, RecogniserModel][] = [
  ['as usual', exampleModel()],
  ['absolute cost, one channel', exampleModel({ normaliser: { channelMask: 0b010000 }, cost: 0 })],
  [
    'longest points, widest band, margin, levelled',
    exampleModel({
      normaliser: { length: 128, channelMask: 0x1fff },
      band: 127,
      marginPercent: 200,
    }),
  ],
  ['shortest points, no band', exampleModel({ normaliser: { length: 4 }, band: 0 })],
]

for (const compiler of ['gcc', 'clang'] as const) {
  describeWithTools(`teaching built by ${compiler} under sanitizers`, [compiler], () => {
    let host: HostBuild
    beforeAll(() => {
      host = new HostBuild(compiler, [
        ...['-O1', '-g', '-fsanitize=address,undefined', '-fno-sanitize-recover'],
      ])
    })
    afterAll(() => host?.dispose())

    it('empties slots from EEPROM that cannot be: of no gesture there is, or of one that another has', () => {
      // Three gestures and four slots: numbers up to 6.
      const slots = ['1:3', '6:2', '1:5', '7:3']
      expect(host.run(encodeModel(exampleModel()), null, 'slots', ...slots)).toEqual([
        'teach 0',
        ...['1:3', '6:2', '1:0', '7:0'],
      ])
      const kernel = exampleModel({ kernel: exampleKernel(16, 6) })
      expect(host.run(encodeModel(kernel), null, 'slots', '1:3')[0]).toBe('teach -20')
    })

    for (const [name, model] of MODELS) {
      it(`says what the WebAssembly build says to every event: ${name}`, () => {
        const bytes = encodeModel(model)
        const random = createRandom(name.length)
        const samples = concat(
          ...Array.from({ length: 40 }, (_, i) => performance(40 + (i >> 2), 4000, random)),
        )
        const wishes = [null, 1, null, 0, null, 2]
        core.load(bytes)
        core.openTeaching({ slots: 3, takes: 3 })
        const found = host.run(
          bytes,
          samples,
          ...['teach', '3', '3'],
          ...wishes.map((w) => `${w ?? 254}`),
        )
        const expected = teachingLog(samples, wishes)
        expect(expected.filter((line) => line.startsWith('teach 3')).length).toBeGreaterThan(0)
        expect(found).toEqual(expected)
      })
    }
  })
}

const STATUS_OF = new Map(
  Object.entries(TEACH_STATUSES).map(([value, status]) => [status as string, value]),
)

/** What the harness prints: a session for each wish, one after the other. */
function teachingLog(samples: Int16Array, wishes: (number | null)[]): string[] {
  const lines: string[] = []
  let open = false
  let next = 0
  const begin = () => {
    while (!open && next < wishes.length) {
      try {
        lines.push(`begin ${core.teach(wishes[next++]!)}`)
        open = true
      } catch (error) {
        if (!(error instanceof CoreError)) throw error
        lines.push(`begin ${error.status}`)
        return
      }
    }
  }
  for (let at = 0; at < samples.length; at += 6) {
    begin()
    if (core.push(samples.subarray(at, at + 6)).length === 0) continue
    const { status, count, nearest, nearestDistance, spread, threshold, event } = core.teachEvent()
    if (status === 'done' || status === 'unlike' || status === 'near') open = false
    const numbers = [count, nearest ?? 255, nearestDistance ?? 0xffffffff, spread, threshold]
    lines.push(`teach ${STATUS_OF.get(status)} ${numbers.join(' ')}`, eventLine(event))
  }
  return lines
}
