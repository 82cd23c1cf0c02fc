import fc from 'fast-check'
import { expect, it } from 'vitest'
import { utf8 } from '../../../src/shared/format/utf8'

it('bytes of any text are those of the platform, halves of a pair included (WHATWG Encoding)', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      expect([...utf8(text)]).toEqual([...new TextEncoder().encode(text)])
    }),
  )
  expect([...utf8('é\ud800%')]).toEqual([0xc3, 0xa9, 0xef, 0xbf, 0xbd, 0x25])
})
