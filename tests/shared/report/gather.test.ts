import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { readFirmwareSources } from '../../../src/build/core-files'
import { loadLightForNode } from '../../../src/build/load-core'
import { repositoryPath } from '../../../src/build/paths'
import { answersInOrder } from '../../../src/shared/light/library-light'
import { coreSourceHash, lightReport, ribbonsOf } from '../../../src/shared/report/gather'
import { tinyLibrary } from '../training/tiny-library'

it('the sum of the core’s sources is what cat and sha256sum give in the C locale', () => {
  const folder = repositoryPath('src/core')
  const names = readdirSync(folder)
    .filter((file) => /\.[ch]$/.test(file))
    .sort()
  const hash = createHash('sha256')
  for (const file of names) hash.update(readFileSync(`${folder}/${file}`))
  expect(coreSourceHash(readFirmwareSources().coreFiles)).toBe(hash.digest('hex'))
})

it('every answer is counted against the three rules of flashes, and the PWM against its own', async () => {
  const { library } = tinyLibrary()
  const { findings } = lightReport(await loadLightForNode(), library)
  const answers = answersInOrder(library)
  expect(findings).toHaveLength(3 * answers.length + 1)
  for (const { key } of answers) {
    const rules = findings.filter((finding) => finding.key === key).map(({ rule }) => rule)
    expect(rules.sort()).toEqual(['bare-led', 'general-flash', 'red-flash'])
  }
})

it('every gesture has its ribbon, made from its takes', () => {
  const full = tinyLibrary()
  const ribbons = ribbonsOf(full)
  expect([...ribbons.keys()]).toEqual(full.library.gestures.map(({ id }) => id))
  expect(ribbons.get('nod')).toMatchObject({ kind: 'path', takes: 12 })
})
