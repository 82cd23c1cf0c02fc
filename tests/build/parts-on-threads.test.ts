import { afterAll, beforeAll, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import { partsOnThreads } from '../../src/build/parts-on-threads'
import type { Core } from '../../src/shared/core/core'
import { evaluateInParts, evaluateLibrary } from '../../src/shared/evaluation/evaluate-library'
import { tinyLibrary } from '../shared/training/tiny-library'

let core: Core
const threads = partsOnThreads(2)
beforeAll(async () => {
  core = await loadCoreForNode()
})
afterAll(() => threads.end())

it('an evaluation on two threads of Node is that on one, to the digit', async () => {
  const full = tinyLibrary({ backgroundS: 20 })
  const told: number[] = []
  const answer = await evaluateInParts(threads.run, full, 'tester', ({ done, total }) => {
    told.push(done / total)
  })
  expect(answer).toEqual(await evaluateLibrary(core, full, 'tester'))
  expect(told.at(-1)).toBe(1)
})

it('threads that were made ready before answer as those that were not', async () => {
  const full = tinyLibrary({ backgroundS: 20 })
  const early = partsOnThreads(2)
  try {
    await early.ready(['condition', 'evaluate'])
    const answer = await evaluateInParts(early.run, full, 'tester')
    expect(answer).toEqual(await evaluateLibrary(core, full, 'tester'))
  } finally {
    early.end()
  }
})

it('what a part refuses comes back as its failure, and the threads go on', async () => {
  const full = tinyLibrary({ backgroundS: 20 })
  const { library } = full
  const target = { ...library.target, modelBudgetBytes: 200 }
  const tight = { ...full, library: { ...library, target } }
  expect(await evaluateInParts(threads.run, tight, 'tester')).toMatchObject({
    ok: false,
    code: 'train/budget',
  })
  expect(await evaluateInParts(threads.run, full, 'tester')).toMatchObject({ ok: true })
})
