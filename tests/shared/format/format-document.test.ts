import { existsSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { repositoryPath } from '../../../src/build/paths'
import { readSamplesCsv, SAMPLE_COLUMNS } from '../../../src/shared/format/samples-csv'
import { parseTakePath } from '../../../src/shared/format/take-path'

const text = readFileSync(repositoryPath('src/shared/format/FORMAT.md'), 'utf8')
const section = (title: string) => text.split(`\n## ${title}\n`)[1]?.split('\n## ')[0] ?? ''

test('the example of a recording in FORMAT.md is read as one', () => {
  const example = /```\n(t_ms[^`]+)```/.exec(section('CSV of a recording'))?.[1] ?? ''
  const read = readSamplesCsv(example, 'FORMAT.md')
  expect(read.ok && [...read.value.tMs]).toEqual([0, 16.7])
  for (const column of SAMPLE_COLUMNS) expect(text).toContain(`\`${column}\``)
})

test('the paths that FORMAT.md names as takes are read as it says', () => {
  const rows = section('Folder of takes').match(/^\| `.*$/gm) ?? []
  expect(rows.length).toBe(3)
  for (const row of rows) {
    const [, paths = '', gesture = '', tester = ''] = row.split('|')
    for (const [, path = ''] of paths.matchAll(/`([^`]+)`/g)) {
      const read = parseTakePath(path)
      if (!read.ok) throw new Error(read.message)
      expect(tester).toContain(`\`${read.value.tester}\``)
      if (read.value.kind === 'take') expect(gesture).toContain(`\`${read.value.gesture}\``)
      else expect(gesture).toContain('background')
    }
  }
})

test('the offsets of the model bytes in FORMAT.md follow from the sizes', () => {
  const rows = [...section('Model bytes').matchAll(/^\| (\d+) +\| ([\d ×+]+?)(?: each)? +\|/gm)]
  const size = (sum: string) =>
    sum
      .split('+')
      .map((product) => product.split('×').reduce((total, factor) => total * Number(factor), 1))
      .reduce((total, part) => total + part, 0)
  let offset = 0
  for (const [, at = '', bytes = ''] of rows) {
    expect(Number(at)).toBe(offset)
    offset += size(bytes)
  }
  // The last row is the gestures, of 8 bytes each; they start behind 76 bytes of fields.
  expect(offset - 8).toBe(76)
})

test('files and contents that FORMAT.md links to are there', () => {
  expect(existsSync(repositoryPath('public/schema/library-3.json'))).toBe(true)
  for (const [, anchor = ''] of text.matchAll(/\]\(#([\w-]+)\)/g)) {
    const titles = [...text.matchAll(/^## (.+)$/gm)].map(([, title = '']) => title)
    expect(titles.map((title) => title.toLowerCase().replaceAll(' ', '-'))).toContain(anchor)
  }
})
