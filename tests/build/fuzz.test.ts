import { expect, it } from 'vitest'
import { mutateBytes, mutateInside, mutateText } from '../../src/build/fuzz/mutate'
import { roundTrip } from '../../src/build/fuzz/round-trip'
import { fuzzSubjects } from '../../src/build/fuzz/subjects'
import { loadCoreForNode } from '../../src/build/load-core'
import { readLibraryFile, writeLibraryFile } from '../../src/shared/format/library-file'
import { fail, ok } from '../../src/shared/model/result'
import { createRandom } from '../../src/shared/statistics/random'
import { trainModel } from '../../src/shared/training/train-model'
import { tinyLibrary } from '../shared/training/tiny-library'

const CASES = 150

it('no reader throws on an altered file, and what it accepts survives being written again', async () => {
  const core = await loadCoreForNode()
  const trained = trainModel(core, tinyLibrary())
  if (!trained.ok) throw new Error(trained.message)
  const subjects = await fuzzSubjects(core, trained.value.bytes)
  expect(subjects.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1)
  for (const { name, alter, judge } of subjects) {
    let accepted = 0
    for (let number = 0; number < CASES; number++) {
      const verdict = await judge(alter(createRandom(900_000 + number)))
      expect(typeof verdict === 'object' ? `${name}, ${number}: ${verdict.wrong}` : '').toBe('')
      if (verdict === 'same') accepted++
    }
    // All refused, or none, would judge nothing.
    expect(accepted, name).toBeGreaterThan(0)
    expect(accepted, name).toBeLessThan(CASES)
  }
})

it('the judge sees a value that changes on the way, and one that its own reader refuses', () => {
  const read = (text: string) => ok(text)
  expect(roundTrip(ok('ring'), (text) => text, read)).toBe('same')
  expect(roundTrip(ok('ring'), (text) => `${text}!`, read)).toMatchObject({
    wrong: expect.stringContaining('different'),
  })
  const refuse = () => fail('a', 'No.')
  expect(roundTrip(ok('ring'), (text) => text, refuse)).toMatchObject({
    wrong: expect.stringContaining('not when written again'),
  })
})

it('alterations are the same for the same seed, and reach what is inside a ZIP', () => {
  const zip = writeLibraryFile(tinyLibrary({ testers: 1, takesEach: 1 }))
  const text = '{"a": 1, "b": "two"}\n'
  const differing = Array.from({ length: 40 }, (_, seed) => {
    const [one, other] = [createRandom(seed), createRandom(seed)]
    expect(mutateBytes(zip, one)).toEqual(mutateBytes(zip, other))
    expect(mutateText(text, one)).toBe(mutateText(text, other))
    const inside = mutateInside(zip, createRandom(seed))
    return readLibraryFile(inside)
  })
  const codes = new Set(differing.map((result) => (result.ok ? 'ok' : result.code)))
  // Sums are right, so the refusals come from what is said and not from a checksum.
  expect([...codes].some((code) => /^library\/|^csv\//.test(code))).toBe(true)
})
