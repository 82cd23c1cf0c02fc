import { beforeEach, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import { CoreError } from '../../src/shared/core/core'
import type { WasmCore } from '../../src/shared/core/create-core'
import { crc32 } from '../../src/shared/format/crc32'
import { decodeModel, encodeModel, modelByteLength } from '../../src/shared/format/model-bytes'
import { exampleModel } from './example-model'

let core: WasmCore
beforeEach(async () => {
  core = await loadCoreForNode()
})

function codeOf(action: () => void): string {
  try {
    action()
  } catch (error) {
    if (error instanceof CoreError) return error.code
    throw error
  }
  return 'accepted'
}

/** Writes a field and mends the check sum, as a careful forger would. */
function forged(change: (view: DataView) => void): Uint8Array {
  const bytes = encodeModel(exampleModel())
  const view = new DataView(bytes.buffer)
  change(view)
  view.setUint32(bytes.length - 4, crc32(bytes.subarray(0, -4)), true)
  return bytes
}

describe('model bytes', () => {
  it('check with the CRC-32 of ZIP: 123456789 gives CBF43926 (check value of the CRC catalogue)', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926)
    expect(crc32(new Uint8Array())).toBe(0)
  })
  it('come back as the model they were made from', () => {
    const model = exampleModel({ marginPercent: 7, button: true })
    const bytes = encodeModel(model)
    expect(bytes.length).toBe(modelByteLength(model))
    const back = decodeModel(bytes, model.gestures)
    expect(back).toEqual({ ok: true, value: model })
  })
  it('are refused by the core and by the reader when any byte is changed or cut off', () => {
    const bytes = encodeModel(exampleModel())
    for (let at = 0; at < bytes.length; at += 1) {
      const damaged = bytes.slice()
      damaged[at]! ^= 0x40
      const code = codeOf(() => core.load(damaged))
      expect(['core/bytes', 'core/version']).toContain(code)
      expect(decodeModel(damaged).ok).toBe(false)
    }
    for (let length = 0; length < bytes.length; length += 13) {
      expect(codeOf(() => core.load(bytes.slice(0, length)))).toBe('core/bytes')
      expect(decodeModel(bytes.slice(0, length)).ok).toBe(false)
    }
  })
  it('of another version are refused as such', () => {
    const other = forged((view) => view.setUint16(4, 1, true))
    expect(codeOf(() => core.load(other))).toBe('core/version')
    expect(decodeModel(other)).toMatchObject({ ok: false, code: 'model/version' })
  })
  it('cannot hold a value that is not an integer of the field', () => {
    expect(() => encodeModel(exampleModel({ band: 1.5 }))).toThrow(RangeError)
    expect(() => encodeModel(exampleModel({ band: 300 }))).toThrow(RangeError)
    expect(() => encodeModel(exampleModel({ band: -1 }))).toThrow(RangeError)
  })
})

describe('model check of the core', () => {
  const out: [string, Parameters<typeof exampleModel>[0]][] = [
    ['rate 0', { board: { rateMillihertz: 0 } }],
    ['no sensitivity', { board: { accelNgPerLsb: 0 } }],
    ['weight above 1023', { segmenter: { accelWeight: 1024 } }],
    ['off above on', { segmenter: { onThreshold: 10, offThreshold: 11 } }],
    ['off of nothing', { segmenter: { offThreshold: 0 } }],
    ['on hold 0', { segmenter: { onHold: 0 } }],
    ['off hold 256', { segmenter: { offHold: 256 } }],
    ['shortest above longest', { segmenter: { minLength: 61 } }],
    ['longest above 1023', { segmenter: { maxLength: 1024 } }],
    ['pre-roll fills the segment', { segmenter: { preRoll: 58 } }],
    ['lag 0', { segmenter: { accelLag: 0 } }],
    ['lag 17', { segmenter: { accelLag: 17 } }],
    ['rest shift 9', { segmenter: { restShift: 9 } }],
    ['no channel', { normaliser: { channelMask: 0 } }],
    ['gain 0', { normaliser: { gain: [0, 32, 32, 32, 32, 32] } }],
    ['floor 0', { normaliser: { floor: [0, 200] } }],
    ['band as long as the series', { band: 16 }],
    ['roll share 100', { rollMinPercent: 100 }],
    ['margin 201', { marginPercent: 201 }],
  ]
  for (const [name, change] of out)
    it(`refuses: ${name}`, () => {
      const model = exampleModel()
      const bytes = encodeModel(exampleModel(change))
      expect(codeOf(() => core.load(encodeModel(model)))).toBe('accepted')
      expect(['core/model', 'core/bytes']).toContain(codeOf(() => core.load(bytes)))
    })
  it('refuses gestures whose templates overlap or are left over', () => {
    const first = 76
    expect(codeOf(() => core.load(forged((v) => v.setUint16(first, 1, true))))).toBe('core/model')
    expect(codeOf(() => core.load(forged((v) => v.setUint16(first + 2, 1, true))))).toBe(
      'core/model',
    )
  })
  it('refuses a board that does not fit the model', () => {
    const bytes = encodeModel(exampleModel())
    const board = { rateMillihertz: 50_000, accelNgPerLsb: 244_140, gyroNdpsPerLsb: 35_000_000 }
    expect(codeOf(() => core.load(bytes, board))).toBe('accepted')
    expect(codeOf(() => core.load(bytes, { ...board, rateMillihertz: 100_000 }))).toBe('core/rate')
    expect(codeOf(() => core.load(bytes, { ...board, gyroNdpsPerLsb: 30_517_578 }))).toBe(
      'core/range',
    )
  })
})
