import fc from 'fast-check'
import { create } from 'qrcode'
import { expect, it } from 'vitest'
import { codePath, drawCode, QUIET_MODULES } from '../../../src/shared/qr/draw-code'
import { readCode } from '../../../src/shared/qr/read-code'

/** Picture of a code, `scale` pixels a module. */
function picture(modules: boolean[][], scale: number) {
  const side = modules.length * scale
  const data = new Uint8ClampedArray(side * side * 4).fill(255)
  modules.forEach((row, y) => {
    row.forEach((dark, x) => {
      if (!dark) return
      for (let pixel = 0; pixel < scale * scale; pixel++) {
        const px = x * scale + (pixel % scale)
        const py = y * scale + Math.floor(pixel / scale)
        data.fill(0, 4 * (py * side + px), 4 * (py * side + px) + 3)
      }
    })
  })
  return { width: side, height: side, data }
}

function modulesOf(text: string): boolean[][] {
  const drawn = drawCode(text)
  if (!drawn.ok) throw new Error(drawn.message)
  return drawn.value
}

it('reads back any text it draws', () => {
  fc.assert(
    fc.property(fc.string({ minLength: 1, maxLength: 300, unit: 'grapheme' }), (text) => {
      expect(readCode(picture(modulesOf(text), 3))).toBe(text)
    }),
    { numRuns: 60 },
  )
})

it('reads what the package qrcode draws', () => {
  const text = 'https://example.org/app/#/join/abc_DEF-123'
  const { size, data } = create(text, { errorCorrectionLevel: 'M' }).modules
  const side = size + 2 * QUIET_MODULES
  const isDark = (x: number, y: number) => x >= 0 && x < size && y >= 0 && data[y * size + x] === 1
  const rows = Array.from({ length: side }, (_, y) =>
    Array.from({ length: side }, (_, x) => isDark(x - QUIET_MODULES, y - QUIET_MODULES)),
  )
  expect(readCode(picture(rows, 4))).toBe(text)
})

it('finds nothing where there is no code', () => {
  expect(readCode(picture([[false]], 40))).toBe(null)
})

it('refuses text that no code holds', () => {
  expect(drawCode('a'.repeat(3000))).toMatchObject({ ok: false, code: 'qr/too-long' })
})

it('draws the dark modules, each row as runs', () => {
  expect(codePath([[true, true, false, true]])).toBe('M0 0h2v1h-2zM3 0h1v1h-1z')
})
