import { strFromU8, unzipSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import { writeLibraryFile } from '../../../src/shared/format/library-file'
import { writeSamplesCsv } from '../../../src/shared/format/samples-csv'
import { libraryFromFolder } from '../../../src/shared/format/take-folder'
import { parseTakePath } from '../../../src/shared/format/take-path'
import { awkwardBlock, sampleLibrary, TARGET } from './sample-library'

describe('parseTakePath', () => {
  const paths: [string, unknown][] = [
    ['raise/A1_003.csv', { kind: 'take', gesture: 'raise', tester: 'A1' }],
    ['set/raise/A1_3.csv', { kind: 'take', gesture: 'raise', tester: 'A1' }],
    ['set\\raise\\A1_3.CSV', { kind: 'take', gesture: 'raise', tester: 'A1' }],
    ['raise__A1__3.csv', { kind: 'take', gesture: 'raise', tester: 'A1' }],
    ['any/raise__A1__3.csv', { kind: 'take', gesture: 'raise', tester: 'A1' }],
    ['a_b/user_7_take2.csv', { kind: 'take', gesture: 'a_b', tester: 'user_7' }],
    ['background/A1_1.csv', { kind: 'background', tester: 'A1' }],
    ['Background__A1__1.csv', { kind: 'background', tester: 'A1' }],
  ]
  for (const [path, expected] of paths) {
    test(`${path} is ${JSON.stringify(expected)}`, () => {
      expect(parseTakePath(path)).toEqual({ ok: true, value: expected })
    })
  }

  for (const path of [
    'raise.csv',
    'A1_1.csv',
    'raise/A1.csv',
    'raise__A1.csv',
    'a__b__c__d.csv',
    '',
  ]) {
    test(`"${path}" is refused with how to name it`, () => {
      const result = parseTakePath(path)
      expect(result).toMatchObject({ ok: false, code: 'folder/name' })
      expect(!result.ok && result.message).toContain('gesture/tester_number.csv')
    })
  }
})

describe('libraryFromFolder', () => {
  test('an unpacked library file is a folder of takes', () => {
    const files = Object.entries(unzipSync(writeLibraryFile(sampleLibrary())))
      .filter(([path]) => path.endsWith('.csv'))
      .map(([path, bytes]) => ({ path, text: strFromU8(bytes) }))
    const result = libraryFromFolder('parade', files, TARGET)
    if (!result.ok) throw new Error(result.message)
    expect(result.value.library.gestures.map((g) => g.name)).toEqual(['Raise', 'Ring-twice'])
    expect(
      result.value.recordings.map(({ recording: r }) => [
        r.kind,
        r.kind === 'take' ? r.gestureId : null,
        r.testerCode,
        r.sampleCount,
      ]),
    ).toEqual([
      ['background', null, 'A1', 7],
      ['take', 'Raise', 'A1', 5],
      ['take', 'Raise', 'A1', 5],
      ['take', 'Ring-twice', 'B-2', 5],
    ])
    // What was made is a library like any other.
    expect(writeLibraryFile(result.value).length).toBeGreaterThan(0)
  })

  test('takes with other headers are read by what the headers say', () => {
    const files = [{ path: 'raise/A1_1.csv', text: 'time_s,ax_g,ay_g,az_g\n0,0,0,1\n0.5,0,0,1\n' }]
    const result = libraryFromFolder('x', files, TARGET)
    if (!result.ok) throw new Error(result.message)
    const { samples, recording } = result.value.recordings[0]!
    expect([...samples.tMs]).toEqual([0, 500])
    expect(samples.values[2]).toBe(Math.fround(9.80665))
    expect(recording.device).toMatchObject({ rateHz: 2, hasGyro: false })
  })

  test('the first bad file is named and nothing comes of the rest', () => {
    const good = { path: 'raise/A1_1.csv', text: writeSamplesCsv(awkwardBlock(3)) }
    const bad = { path: 'ring/A1_1.csv', text: `${good.text}1,2\r\n` }
    expect(libraryFromFolder('x', [good, bad], TARGET)).toMatchObject({
      ok: false,
      code: 'csv/short-row',
      message: expect.stringContaining('ring/A1_1.csv, row 5'),
    })
  })

  test('a folder without takes is refused', () => {
    expect(libraryFromFolder('x', [], TARGET)).toMatchObject({ ok: false, code: 'folder/empty' })
  })
})
