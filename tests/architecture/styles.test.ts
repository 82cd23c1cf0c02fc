import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { listFiles } from '../../src/build/list-files'
import { repositoryPath } from '../../src/build/paths'

const UI = repositoryPath('src/ui')
/** In the page from the start; places may adapt them, such as the report for paper. */
const ALWAYS_THERE = /^(theme|common|shell)\//

// A screen's style sheet stays in the page when the next screen comes, so a name used by two sheets would
// look one way or the other by the way one came.
test('no class begins a rule in the style sheets of two places', () => {
  const owners = new Map<string, Set<string>>()
  for (const path of listFiles(UI).filter((one) => one.endsWith('.css'))) {
    if (ALWAYS_THERE.test(path)) continue
    const css = readFileSync(`${UI}/${path}`, 'utf8').replaceAll(/\/\*.*?\*\//gs, '')
    for (const [, name = ''] of css.matchAll(/^\s*\.([a-z][\w-]*)\s*[,{]/gm)) {
      owners.set(name, (owners.get(name) ?? new Set()).add(path))
    }
  }
  expect(owners.size).toBeGreaterThan(200)
  const shared = [...owners].filter(([, paths]) => paths.size > 1)
  expect(shared.map(([name, paths]) => `.${name} in ${[...paths].join(' and ')}`)).toEqual([])
})
