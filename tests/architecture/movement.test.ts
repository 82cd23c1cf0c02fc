import { expect, test } from 'vitest'
import { filesBelow } from './source-files'

const WHEN_WANTED = /@media \(prefers-reduced-motion: no-preference\) \{(?:[^{}]|\{[^{}]*\})*\}/g

test('no style moves anything for someone who asked for reduced motion', () => {
  const sheets = filesBelow('src/ui', ['.css'])
  const always = sheets.filter(({ text }) =>
    /^\s*(animation|transition|scroll-behavior)\b/m.test(text.replaceAll(WHEN_WANTED, '')),
  )
  expect(sheets.length).toBeGreaterThan(5)
  expect(always.map(({ path }) => path)).toEqual([])
})
