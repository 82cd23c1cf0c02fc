import fc from 'fast-check'
import { expect, it } from 'vitest'
import { fromBase45, toBase45 } from '../../../src/shared/frames/base45'

const bytes = (text: string) => new TextEncoder().encode(text)

it('encodes the examples of RFC 9285, section 4.3', () => {
  expect(toBase45(bytes('AB'))).toBe('BB8')
  expect(toBase45(bytes('Hello!!'))).toBe('%69 VD92EX0')
  expect(toBase45(bytes('base-45'))).toBe('UJCLQE7W581')
})

it('decodes the example of RFC 9285, section 4.4, and refuses what encodes no bytes', () => {
  expect(fromBase45('QED8WEX0')).toEqual(bytes('ietf!'))
  expect(fromBase45('FGW')).toEqual(new Uint8Array([0xff, 0xff]))
  // RFC 9285, section 6: "GGW" is 65536.
  for (const wrong of ['GGW', ':::', 'A', 'ABCD', 'ab1', 'V5']) expect(fromBase45(wrong)).toBe(null)
})

it('gives any bytes back', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (content) => {
      expect(fromBase45(toBase45(content))).toEqual(content)
    }),
  )
})
