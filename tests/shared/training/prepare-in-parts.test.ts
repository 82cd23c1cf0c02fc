import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core } from '../../../src/shared/core/core'
import {
  evaluateInParts,
  evaluateLibrary,
  evaluateMatchers,
} from '../../../src/shared/evaluation/evaluate-library'
import type { RunParts } from '../../../src/shared/parts/part-jobs'
import { partsHere } from '../../../src/shared/parts/parts-here'
import { prepareLibrary } from '../../../src/shared/training/prepare'
import { ConditionedCache, prepareInParts } from '../../../src/shared/training/prepare-in-parts'
import { tinyLibrary } from './tiny-library'

let core: Core
beforeAll(async () => {
  core = await loadCoreForNode()
})

/** Runs here and counts the recordings that are conditioned. */
function counting(): { run: RunParts; conditioned: () => number } {
  let count = 0
  const here = partsHere(core)
  const run = ((name, shared, parts, onProgress) => {
    if (name === 'condition')
      for (const part of parts as unknown as unknown[][]) count += part.length
    return here(name, shared, parts, onProgress)
  }) as RunParts
  return { run, conditioned: () => count }
}

const full = tinyLibrary({ backgroundS: 20 })
const all = full.recordings.length

describe('recordings conditioned in parts', () => {
  it('are those conditioned at once', async () => {
    expect(await prepareInParts(partsHere(core), full)).toEqual({
      ok: true,
      value: prepareLibrary(full),
    })
  })

  it('are kept: the next time only what is new or was trimmed is conditioned, with the same outcome', async () => {
    const { run, conditioned } = counting()
    const cache = new ConditionedCache(1e7)
    await prepareInParts(run, full, cache)
    expect(conditioned()).toBe(all)
    await prepareInParts(run, full, cache)
    expect(conditioned()).toBe(all)

    const [first, second, ...rest] = full.recordings
    const trimmed = {
      ...first!,
      recording: { ...first!.recording, trim: { startMs: 100, endMs: 900 } },
    }
    const further = { ...second!, recording: { ...second!.recording, id: 'further' } }
    const changed = { ...full, recordings: [trimmed, second!, further, ...rest] } as typeof full
    const again = await prepareInParts(run, changed, cache)
    expect(conditioned()).toBe(all + 2)
    expect(again).toEqual({ ok: true, value: prepareLibrary(changed) })
  })

  it('are all conditioned again for another sensor', async () => {
    const { run, conditioned } = counting()
    const cache = new ConditionedCache(1e7)
    await prepareInParts(run, full, cache)
    const { library } = full
    const target = { ...library.target, rateHz: library.target.rateHz * 2 }
    const other = { ...full, library: { ...library, target } }
    const again = await prepareInParts(run, other, cache)
    expect(conditioned()).toBe(2 * all)
    expect(again).toEqual({ ok: true, value: prepareLibrary(other) })
  })

  it('take no more memory than is allowed; what was used longest ago goes first', () => {
    const cache = new ConditionedCache(100)
    const of = (values: number) => ({ counts: new Int16Array(values), from: 0, to: 0 })
    cache.set('a', of(20))
    cache.set('b', of(20))
    cache.get('a')
    cache.set('c', of(10))
    expect(cache.size).toBe(100)
    cache.set('d', of(5))
    expect(
      [cache.get('a'), cache.get('b'), cache.get('c')].map((one) => one !== undefined),
    ).toEqual([true, false, true])
    cache.set('huge', of(1000))
    expect(cache.size).toBe(0)
  })
})

describe('evaluations in parts', () => {
  it('are the evaluation at once, with a cache or without', async () => {
    const wanted = await evaluateLibrary(core, full, 'tester')
    const cache = new ConditionedCache(1e7)
    const run = partsHere(core)
    for (const options of [{}, { cache }, { cache }]) {
      expect(await evaluateInParts(run, full, 'tester', undefined, options)).toEqual(wanted)
    }
  })

  it('of several matchers are those of each alone', async () => {
    const prepared = prepareLibrary(full)
    const matchers = ['template', 'kernel'] as const
    const job = { prepared, holdout: 'tester' as const, matchers }
    const together = await evaluateMatchers(partsHere(core), job)
    for (const [at, matcher] of matchers.entries()) {
      const alone = await evaluateLibrary(core, full, 'tester', undefined, { matcher })
      if (!together.ok || !alone.ok) throw new Error('An evaluation failed.')
      expect(together.value[at]).toEqual(alone.value)
    }
  })
})
