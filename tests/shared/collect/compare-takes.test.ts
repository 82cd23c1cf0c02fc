import { beforeAll, describe, expect, test } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import { compareTakes } from '../../../src/shared/collect/compare-takes'
import type { TakesCompared } from '../../../src/shared/collect/takes-compared'
import { generateDemoLibrary } from '../../../src/shared/demo/demo-library'
import type { FullLibrary } from '../../../src/shared/model/library'
import { createRandom } from '../../../src/shared/statistics/random'

/** The demo's takes with some labelled as another gesture, and one that is noise. */
let full: FullLibrary
let wrong: Map<string, string>
let noiseId: string
let compared: TakesCompared

beforeAll(async () => {
  const demo = await generateDemoLibrary(1)
  const [first, second] = demo.library.gestures.map(({ id }) => id)
  wrong = new Map()
  const takes = demo.recordings.filter(({ recording }) => recording.kind === 'take')
  const random = createRandom(3)
  noiseId = takes.at(-1)!.recording.id
  full = {
    ...demo,
    recordings: takes.map((one) => {
      const { recording, samples } = one
      if (recording.kind !== 'take') return one
      if (recording.id === noiseId) {
        const values = samples.values.map(() => random.normal() * 9)
        return { recording, samples: { tMs: samples.tMs, values } }
      }
      if (recording.gestureId !== second || wrong.size === 3) return one
      wrong.set(recording.id, second!)
      return { recording: { ...recording, gestureId: first! }, samples }
    }),
  }
  const result = compareTakes(await loadCoreForNode(), full)
  if (!result.ok) throw new Error(result.message)
  compared = result.value
})

describe('takes compared with the others of their gesture', () => {
  test('one that was labelled wrongly lies far out, and nearer to what it is', () => {
    const found = compared.takes.filter(({ takeId }) => wrong.has(takeId))
    expect(found.map(({ far }) => far)).toEqual([true, true, true])
    expect(found.map(({ nearer }) => nearer)).toEqual([...wrong.values()])
  })

  test('one that is noise lies far out, or is not cut as one movement', () => {
    const noise = compared.takes.find(({ takeId }) => takeId === noiseId)
    expect(noise?.far === true || noise?.cut !== 'ok').toBe(true)
  })

  test('of all others few lie far out', () => {
    const others = compared.takes.filter(
      ({ takeId }) => !wrong.has(takeId) && takeId !== noiseId && takeId,
    )
    expect(others.filter(({ far }) => far).length / others.length).toBeLessThan(0.03)
  })

  test('have a ratio whose median is 1 in every gesture', () => {
    for (const { id } of full.library.gestures) {
      const ratios = compared.takes
        .flatMap(({ gestureId, ratio }) => (gestureId === id && ratio !== null ? [ratio] : []))
        .sort((a, b) => a - b)
      const middle = ratios.length / 2
      const median = (ratios[Math.ceil(middle) - 1]! + ratios[Math.floor(middle)]!) / 2
      expect(median).toBeCloseTo(1, 1)
    }
  })

  test('are counted by phone, rate and hand, and each take once in each', () => {
    for (const rows of [compared.devices, compared.rates, compared.hands]) {
      expect(rows.reduce((sum, { takes }) => sum + takes, 0)).toBe(compared.takes.length)
    }
    expect(compared.hands.map(({ name }) => name).sort()).toEqual(['left', 'right'])
  })
})
