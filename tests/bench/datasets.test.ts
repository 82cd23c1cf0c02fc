import { deflateSync } from 'node:zlib'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { publicFigures } from '../../src/build/bench/accuracy'
import { dimensionsToCounts, toCount } from '../../src/build/datasets/cut-series'
import { parseMat5 } from '../../src/build/datasets/mat5'
import { datasetFolder } from '../../src/build/datasets/root'
import { parseTsFormat } from '../../src/build/datasets/ts-format'
import { loadUea } from '../../src/build/datasets/uea'
import { loadUtdMhadWrist } from '../../src/build/datasets/utd-mhad'
import { loadCoreForNode } from '../../src/build/load-core'

afterEach(() => vi.unstubAllEnvs())

describe('the archive text format', () => {
  const header = '#a comment\n@problemName Tiny\n@timeStamps false\n@classLabel true a b\n@data\n'

  it('gives dimensions and label of each line', () => {
    const parsed = parseTsFormat(`${header}1,2.5,-3:4,5,6:a\n\n7,8,9:1,1,1:b\n`, 'tiny.ts')
    if (!parsed.ok) throw new Error(parsed.message)
    expect(parsed.value.map(({ label }) => label)).toEqual(['a', 'b'])
    expect(parsed.value[0]?.dimensions.map((d) => [...d])).toEqual([
      [1, 2.5, -3],
      [4, 5, 6],
    ])
  })

  it.each([
    ['a missing value', '1,?,3:1,2,3:a'],
    ['dimensions of different length', '1,2:1,2,3:a'],
    ['no label', '1,2,3:'],
  ])('refuses a line with %s by file and line', (_, line) => {
    expect(parseTsFormat(`${header}${line}\n`, 'tiny.ts')).toEqual({
      ok: false,
      code: 'ts/row',
      message: 'tiny.ts, line 6 is not a series of numbers with a label.',
    })
  })
})

/** An element of a MAT file, padded to eight bytes. */
function element(type: number, data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(8 + Math.ceil(data.length / 8) * 8)
  const view = new DataView(bytes.buffer)
  view.setUint32(0, type, true)
  view.setUint32(4, data.length, true)
  bytes.set(data, 8)
  return bytes
}

function join(...parts: Uint8Array[]): Uint8Array {
  return Uint8Array.from(parts.flatMap((part) => [...part]))
}

/** A 2 × 3 matrix named "m" with columns (1, 2), (3, 4), (5, 6). */
function matrixElement(): Uint8Array {
  const flags = element(6, Uint8Array.of(6, 0, 0, 0, 0, 0, 0, 0))
  const dimensions = element(5, new Uint8Array(Int32Array.of(2, 3).buffer))
  const smallName = Uint8Array.of(1, 0, 1, 0, 0x6d, 0, 0, 0)
  const values = element(9, new Uint8Array(Float64Array.of(1, 2, 3, 4, 5, 6).buffer))
  return element(14, join(flags, dimensions, smallName, values))
}

function matFile(body: Uint8Array): Uint8Array {
  const header = new Uint8Array(128)
  header.set([0x00, 0x01, 0x49, 0x4d], 124)
  return join(header, body)
}

describe('level 5 MAT files', () => {
  const compressed = (() => {
    const packed = deflateSync(matrixElement())
    const bytes = new Uint8Array(8 + packed.length)
    const view = new DataView(bytes.buffer)
    view.setUint32(0, 15, true)
    view.setUint32(4, packed.length, true)
    bytes.set(packed, 8)
    return bytes
  })()

  it.each([
    ['plain', matrixElement()],
    ['compressed', compressed],
  ])('give a %s matrix, column after column', (_, body) => {
    const parsed = parseMat5(matFile(join(body, body)), 'tiny.mat')
    if (!parsed.ok) throw new Error(parsed.message)
    expect(parsed.value).toHaveLength(2)
    expect(parsed.value[1]).toMatchObject({ name: 'm', rows: 2, columns: 3 })
    expect([...(parsed.value[1]?.values ?? [])]).toEqual([1, 2, 3, 4, 5, 6])
  })

  it('that are cut short or something else are refused', () => {
    const whole = matFile(matrixElement())
    expect(parseMat5(whole.slice(0, 150), 'a.mat')).toMatchObject({ code: 'mat/damaged' })
    expect(parseMat5(whole.slice(0, 90), 'a.mat')).toMatchObject({ code: 'mat/header' })
  })
})

describe('counts', () => {
  it('round halves away from zero and saturate at the ends of int16', () => {
    expect([0.5, -0.5, 2.4, 40000, -40000].map(toCount)).toEqual([1, -1, 2, 32767, -32768])
  })

  it('lie sample by sample, with the axes that are absent at nought', () => {
    const counts = dimensionsToCounts(
      [
        [1, 2],
        [3, 4],
        [5, 6],
        [7, 8],
      ],
      [10, 100],
    )
    expect([...counts]).toEqual([10, 30, 50, 700, 0, 0, 20, 40, 60, 800, 0, 0])
  })
})

describe('data sets that are absent', () => {
  it('are said to be skipped, and no figure is made up for them', async () => {
    vi.stubEnv('MOVEWRIGHT_DATASETS', '/nowhere/at/all')
    const { figures, skipped } = publicFigures(await loadCoreForNode())
    expect(figures).toEqual([])
    expect(skipped).toHaveLength(4)
    for (const sentence of skipped) {
      expect(sentence).toContain('skipped')
      expect(sentence).toContain('MOVEWRIGHT_DATASETS')
    }
  })
})

// Counts as the sets' own documents state them.
describe.skipIf(!datasetFolder('UEA_UWaveGestureLibrary').ok)('data sets that are there', () => {
  it.each([
    ['UWaveGestureLibrary', 120, 320, 8, 0b111, 315],
    ['BasicMotions', 40, 40, 4, 0b111111, 100],
    ['RacketSports', 151, 152, 4, 0b111111, 30],
  ])('hold of %s what its document says', (name, train, test, labels, channelMask, length) => {
    const loaded = loadUea(name)
    if (!loaded.ok) throw new Error(loaded.message)
    const { value } = loaded
    expect([value.train.length, value.test.length]).toEqual([train, test])
    expect(value.labels).toHaveLength(labels)
    expect(value.channelMask).toBe(channelMask)
    expect(value.test.every(({ counts }) => counts.length === length * 6)).toBe(true)
  })

  it('hold 21 wrist actions of eight subjects, one recording missing of action 8', () => {
    const ranges = {
      accel: { fullScale: 8, nanoPerLsb: 244_141 },
      gyro: { fullScale: 1000, nanoPerLsb: 30_517_578 },
    }
    const loaded = loadUtdMhadWrist(ranges)
    if (!loaded.ok) throw new Error(loaded.message)
    expect(loaded.value).toHaveLength(21 * 32 - 1)
    expect(new Set(loaded.value.map(({ tester }) => tester)).size).toBe(8)
    expect(loaded.value.filter(({ label }) => label === 'a08')).toHaveLength(31)
  })
})
