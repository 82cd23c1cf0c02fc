import { appendFileSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { measuringDigest } from '../../src/build/measuring'
import { repositoryPath } from '../../src/build/paths'
import { configOf } from '../../src/build/vite.config'

let shared: string
beforeEach(() => {
  shared = mkdtempSync(join(tmpdir(), 'movewright-shared-'))
  cpSync(repositoryPath('src/shared'), shared, { recursive: true })
})
afterEach(() => rmSync(shared, { recursive: true }))

it.each([
  'conditioning/condition-recording.ts',
  'training/train-model.ts',
  'training/kernel/fit-matcher.ts',
  'evaluation/evaluate-library.ts',
  'decide/learning-gain.ts',
  'grip/measure-grip.ts',
  'statistics/wilson.ts',
  'compare/compare-evaluations.ts',
  'teach/teach-cost.ts',
  'core/batch.ts',
])('a change in %s makes figures measured before older', (file) => {
  const before = measuringDigest(shared)
  appendFileSync(join(shared, file), '\nexport const factor = 1.1\n')
  expect(measuringDigest(shared)).not.toBe(before)
})

it('words, and other ends of lines, leave them as they are', () => {
  const before = measuringDigest(shared)
  appendFileSync(join(shared, 'words/en/proof.ts'), '\nexport const more = 1\n')
  const wilson = join(shared, 'statistics/wilson.ts')
  writeFileSync(wilson, readFileSync(wilson, 'utf8').replaceAll('\n', '\r\n'))
  expect(measuringDigest(shared)).toBe(before)
})

it('the digest is in what is built', () => {
  const { define } = configOf('en')
  expect(define).toMatchObject({ __MEASURING__: JSON.stringify(measuringDigest()) })
  expect(measuringDigest()).toMatch(/^[0-9a-f]{64}$/)
})
