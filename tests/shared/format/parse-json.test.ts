import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseJson, plainText } from '../../../src/shared/format/parse-json'

const OVERRIDE = '\u202e'

describe('JSON from outside', () => {
  it('reads as JSON.parse does when its texts are plain', () => {
    fc.assert(
      fc.property(fc.jsonValue({ noUnicodeString: false }), (value) => {
        const text = JSON.stringify(value)
        const plain = plainText(text) === text && !/\\[bfu]|-0/.test(text)
        fc.pre(plain)
        expect(parseJson(text)).toEqual(JSON.parse(text))
      }),
    )
  })

  it('loses controls and turned writing, raw or escaped, and keeps accents, breaks and marks', () => {
    const name = `Ra\u0000ise${OVERRIDE}gnir\u2066\u0085 é\u200f\n`
    const expected = { name: 'Raisegnir é\u200f\n' }
    expect(parseJson(JSON.stringify({ name }))).toEqual(expected)
    const escaped = JSON.stringify({ name }).replace(
      /[^ -~]/g,
      (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, '0')}`,
    )
    expect(escaped).toContain('\\u202e')
    expect(parseJson(escaped)).toEqual(expected)
  })

  it('has no negative nought, which would be another number once written', () => {
    for (const text of ['[-0]', '[-0.0]', '[-0e5]', '[-1e-999]', '{"a": -0}']) {
      const found = Object.values(parseJson(text) as object)
      expect(found.map((one) => Object.is(one, 0))).toEqual([true])
    }
    expect(parseJson('[-0.5, -10, 0, -1e-9]')).toEqual([-0.5, -10, 0, -1e-9])
  })

  it('puts nothing on the prototype of objects', () => {
    const parsed = parseJson('{"__proto__": {"polluted": true}, "constructor": {"a": "\\u0001"}}')
    expect(Object.hasOwn(parsed as object, '__proto__')).toBe(true)
    expect(({} as Record<string, unknown>).polluted).toBeUndefined()
  })

  it('throws and does not end the process when nested a million deep', () => {
    const deep = `${'['.repeat(1_000_000)}"\\u0001"${']'.repeat(1_000_000)}`
    expect(() => parseJson(deep)).toThrow()
  })
})
