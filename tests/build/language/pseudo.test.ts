import { describe, expect, it } from 'vitest'
import { pseudoSource, pseudoText } from '../../../src/build/language/pseudo'
import { filesBelow } from '../../architecture/source-files'

describe('the pseudo-language', () => {
  it('gives every letter an accent and every vowel twice', () => {
    expect(pseudoText('Stop and keep')).toBe('Šŧóóþ ááñð ķééééþ')
  })

  it('leaves figures, units, tags and escapes as they are', () => {
    expect(pseudoText('in 20 ms at 200 Hz')).toBe('ííñ 20 ms ááŧ 200 Hz')
    expect(pseudoText('<b class="x">now</b> &amp; then\\n')).toBe(
      '<b class="x">ñóóŵ</b> &amp; ŧĥééñ\\n',
    )
  })

  it('is about a third longer than the English that stands in the words', () => {
    const texts = filesBelow('src/shared/words/en', ['.ts']).flatMap(({ text }) =>
      [...text.matchAll(/'([A-Z][a-z]+ [^']{20,})'/g)].map(([, found = '']) => found),
    )
    const lengths = texts.map((text) => pseudoText(text).length / text.length)
    expect(texts.length).toBeGreaterThan(50)
    expect(lengths.reduce((a, b) => a + b, 0) / texts.length).toBeCloseTo(1.33, 1)
  })

  it('changes texts of a file of words and nothing that the program reads', () => {
    const code = (next: string, take: string, kept: string, none: string) => `
import { plural } from './numbers'
export const PLACE = {
  'runner-up': '${next}',
  takes: (kind: 'take' | 'none', n: number) =>
    kind === 'take' ? \`\${plural('${take}', n)} ${kept}\` : '${none}',
  when: (at: Date) => at.toLocaleString('en-GB'),
  code: 'storage/full',
}`
    expect(pseudoSource('place.ts', code('next', 'take', 'kept', 'none'))).toBe(
      code('ñééẋŧ', 'ŧááķéé', 'ķééþŧ', 'ñóóñéé'),
    )
  })
})
