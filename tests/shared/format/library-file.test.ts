import { readFileSync } from 'node:fs'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import { repositoryPath } from '../../../src/build/paths'
import { contentId } from '../../../src/shared/collect/content-id'
import { readLibraryFile, writeLibraryFile } from '../../../src/shared/format/library-file'
import { defaultAnswer, defaultLight } from '../../../src/shared/light/defaults'
import { LIBRARY_FORMAT_VERSION } from '../../../src/shared/model/library'
import type { Answer, LightKey } from '../../../src/shared/model/light'
import { samplePlan, sampleSession } from '../collect/samples'
import { collectedLibrary } from './collected-library'
import { sampleLibrary, take } from './sample-library'

type Json = Record<string, unknown>

/** The sample library's file after a change to its parts. */
function changed(change: (json: Json, files: Record<string, Uint8Array>) => void): Uint8Array {
  const files = unzipSync(writeLibraryFile(sampleLibrary()))
  const json: Json = JSON.parse(strFromU8(files['library.json'] ?? new Uint8Array()))
  change(json, files)
  return zipSync({ ...files, 'library.json': strToU8(JSON.stringify(json)) })
}

function refusal(bytes: Uint8Array): string {
  const result = readLibraryFile(bytes)
  return result.ok ? 'read' : `${result.code}: ${result.message}`
}

const recordingsOf = (json: Json) => json.recordings as Json[]
const libraryOf = (json: Json) => json.library as Json

describe('library file', () => {
  test('holds one CSV a recording, named so that a person finds a take', () => {
    expect(Object.keys(unzipSync(writeLibraryFile(sampleLibrary())))).toEqual([
      'library.json',
      'takes/Raise/A1_001.csv',
      'takes/Raise/A1_002.csv',
      'takes/Ring-twice/B-2_001.csv',
      'background/A1_001.csv',
    ])
  })

  test('reads back equal in every fact and every bit', () => {
    const full = sampleLibrary()
    expect(readLibraryFile(writeLibraryFile(full))).toEqual({ ok: true, value: full })
  })

  test('written again after reading, has the same bytes', () => {
    const bytes = writeLibraryFile(sampleLibrary())
    const read = readLibraryFile(bytes)
    expect(read.ok && writeLibraryFile(read.value)).toEqual(bytes)
  })

  test('of version 1, without answers and light, reads as it was', () => {
    const old = new Uint8Array(readFileSync(repositoryPath('tests/shared/format/library-1.zip')))
    expect(JSON.parse(strFromU8(unzipSync(old)['library.json']!)).formatVersion).toBe(1)
    const full = sampleLibrary()
    // As it was when the file was written, whatever the defaults are now.
    Object.assign(full.library.training, { templatesPerGesture: 4, length: 32, bandShare: 0.15 })
    expect(readLibraryFile(old)).toEqual({ ok: true, value: full })
  })

  test('of version 2, without plans, sessions and withdrawals, reads as it was', () => {
    const old = new Uint8Array(readFileSync(repositoryPath('tests/shared/format/library-2.zip')))
    expect(JSON.parse(strFromU8(unzipSync(old)['library.json']!)).formatVersion).toBe(2)
    const full = sampleLibrary()
    // As it was when the file was written, whatever the defaults are now.
    Object.assign(full.library.training, { templatesPerGesture: 4, length: 24, bandShare: 0.125 })
    const read = readLibraryFile(old)
    expect(read.ok && read.value.recordings).toEqual(full.recordings)
    expect(read.ok && read.value.library).toMatchObject({
      ...full.library,
      light: { minChangeMs: 600 },
    })
  })

  test('of version 3, with all that it may have, reads as it was', () => {
    const old = new Uint8Array(readFileSync(repositoryPath('tests/shared/format/library-3.zip')))
    expect(JSON.parse(strFromU8(unzipSync(old)['library.json']!)).formatVersion).toBe(3)
    expect(readLibraryFile(old)).toEqual({ ok: true, value: collectedLibrary() })
  })

  test('of the present version is kept, for the next one to read', () => {
    const path = repositoryPath(`tests/shared/format/library-${LIBRARY_FORMAT_VERSION}.zip`)
    expect(readLibraryFile(new Uint8Array(readFileSync(path))).ok).toBe(true)
  })

  test('keeps plans, sessions, withdrawals and what was changed', () => {
    const full = sampleLibrary()
    const at = '2026-11-25T11:04:44Z'
    full.library.plans = [samplePlan()]
    full.library.sessions = [sampleSession()]
    full.library.withdrawals = [
      { kind: 'session', key: '1'.repeat(32), why: 'withdrawn', testerCode: 'K7Q4MXA', at },
    ]
    Object.assign(full.recordings[0]!.recording, {
      sessionId: sampleSession().id,
      contentId: contentId(full.recordings[0]!.samples),
      history: [{ id: '2'.repeat(32), field: 'note', value: 'low', at, over: [] }],
    })
    expect(readLibraryFile(writeLibraryFile(full))).toEqual({ ok: true, value: full })
  })

  test('keeps answers, light, LED, cells and the acknowledgement', () => {
    const full = sampleLibrary()
    const light = defaultLight()
    light.acknowledgement = { text: 'Shown behind glass.', at: '2026-11-25T11:04:44Z', covers: [] }
    const answer = { ...defaultAnswer(1, 2), sound: [{ value: 440, ms: 80 }] }
    full.library.gestures[0] = { ...full.library.gestures[0]!, answer }
    full.library.light = light
    expect(readLibraryFile(writeLibraryFile(full))).toEqual({ ok: true, value: full })
  })

  test.each(['template', 'kernel', 'auto'] as const)('keeps the matcher %s', (matcher) => {
    const full = sampleLibrary()
    full.library.training = { ...full.library.training, matcher }
    expect(readLibraryFile(writeLibraryFile(full))).toEqual({ ok: true, value: full })
  })

  test('an effect that no player would take is refused with its place', () => {
    const full = sampleLibrary()
    const answer = defaultAnswer(0, 2)
    full.library.gestures[1] = { ...full.library.gestures[1]!, answer }
    const bytes = changed((json) => {
      Object.assign(json, JSON.parse(strFromU8(unzipSync(writeLibraryFile(full))['library.json']!)))
      const [, ring] = libraryOf(json).gestures as { answer: Answer }[]
      const key = { level: 9, colour: [0, 0, 0], ease: 'step' }
      ring!.answer.light.kind = 'keys'
      ring!.answer.light.keys = [0, 60, 20].map((atMs) => ({ ...key, atMs })) as LightKey[]
    })
    expect(refusal(bytes)).toContain(
      'library.gestures[1].answer: Keyframe 3 is at 20 ms, before keyframe 2 at 60 ms',
    )
  })

  test('an empty library is a library', () => {
    const full = { ...sampleLibrary(), recordings: [] }
    expect(readLibraryFile(writeLibraryFile(full))).toEqual({ ok: true, value: full })
  })

  test('gestures of the same or odd names get folders of their own', () => {
    const full = sampleLibrary()
    const names = ['ring', 'Ring', 'con', '../..', 'background', '持ち上げる', 'a_b']
    full.library.gestures = names.map((name, n) => ({ id: `g${n}`, name, note: '' }))
    full.recordings = full.library.gestures.map(({ id }) => ({
      recording: take(`t-${id}`, id, 'A1', 0),
      samples: { tMs: new Float64Array(0), values: new Float32Array(0) },
    }))
    const bytes = writeLibraryFile(full)
    expect(Object.keys(unzipSync(bytes)).slice(1)).toEqual([
      'takes/ring/A1_001.csv',
      'takes/Ring-2/A1_001.csv',
      'takes/con-/A1_001.csv',
      'takes/gesture/A1_001.csv',
      'takes/background-2/A1_001.csv',
      'takes/持ち上げる/A1_001.csv',
      'takes/a-b/A1_001.csv',
    ])
    expect(readLibraryFile(bytes)).toEqual({ ok: true, value: full })
  })

  test('is not written when it could not be read again', () => {
    const full = sampleLibrary()
    full.recordings[0]!.recording.sampleCount = 6
    expect(() => writeLibraryFile(full)).toThrow('says 6 samples and has 5')
  })

  test('files the operating system added when packing again are passed over', () => {
    const bytes = changed((_, files) => {
      files['__MACOSX/._library.json'] = strToU8('x')
    })
    expect(refusal(bytes)).toBe('read')
  })
})

describe('a library file is refused', () => {
  test('when it is no ZIP', () => {
    expect(refusal(strToU8('hello'))).toMatch(/^zip\/not-a-zip/)
  })

  test('when library.json is missing', () => {
    expect(refusal(zipSync({ 'a.csv': strToU8('') }))).toMatch(
      /^library\/no-document: library\.json/,
    )
  })

  test('when library.json is not JSON', () => {
    expect(refusal(zipSync({ 'library.json': strToU8('{') }))).toMatch(/^library\/json/)
  })

  test('when it comes from a newer Movewright, with what to do', () => {
    const bytes = changed((json) => {
      json.formatVersion = 4
      json.somethingNew = true
    })
    expect(refusal(bytes)).toBe(
      'library/newer: This library file has format version 4; this Movewright reads up to 3. Update Movewright and import it again.',
    )
  })

  test('when it is some other JSON', () => {
    expect(refusal(zipSync({ 'library.json': strToU8('{"a":1}') }))).toMatch(/^library\/format/)
  })

  test('when a CSV is missing, naming it', () => {
    const bytes = changed((_, files) => {
      delete files['takes/Raise/A1_002.csv']
    })
    expect(refusal(bytes)).toMatch(/^library\/missing: takes\/Raise\/A1_002\.csv is missing/)
  })

  test('when a row is damaged, naming file, row and column', () => {
    const bytes = changed((_, files) => {
      const path = 'takes/Raise/A1_002.csv'
      const rows = strFromU8(files[path] ?? new Uint8Array()).split('\r\n')
      rows[3] = rows[3]?.replace(/^[^,]*,[^,]*/, '33.4,NaN') ?? ''
      files[path] = strToU8(rows.join('\r\n'))
    })
    expect(refusal(bytes)).toBe(
      'csv/number: takes/Raise/A1_002.csv, row 4, column ax_mps2: "NaN" is not a finite number.',
    )
  })

  test('when samples are not those of their content id', () => {
    const bytes = changed((json) => {
      Object.assign(recordingsOf(json)[2]!, { contentId: 'ab'.repeat(32) })
    })
    expect(refusal(bytes)).toBe(
      'library/altered: takes/Ring-twice/B-2_001.csv does not hold the samples that library.json says: it was altered on the way. Bring the file over again.',
    )
  })

  test('when rows are missing', () => {
    const bytes = changed((_, files) => {
      const path = 'background/A1_001.csv'
      const rows = strFromU8(files[path] ?? new Uint8Array()).split('\r\n')
      files[path] = strToU8(rows.slice(0, 4).join('\r\n'))
    })
    expect(refusal(bytes)).toMatch(/^library\/count: background\/A1_001\.csv has 3 samples/)
  })

  const faults: [string, (json: Json) => void, RegExp][] = [
    ['an unknown key', (json) => Object.assign(libraryOf(json), { extra: 1 }), /library\.extra/],
    ['a missing key', (json) => delete libraryOf(json).name, /library\.name/],
    [
      'a count below 0',
      (j) => Object.assign(recordingsOf(j)[1]!, { sampleCount: -1 }),
      /recordings\[1\]\.sampleCount/,
    ],
    [
      'null for a number',
      (j) => Object.assign(recordingsOf(j)[0]!, { durationMs: null }),
      /recordings\[0\]\.durationMs/,
    ],
    [
      'an unknown gesture',
      (j) => Object.assign(recordingsOf(j)[0]!, { gestureId: 'x' }),
      /recordings\[0\].*"x"/,
    ],
    [
      'another library',
      (j) => Object.assign(recordingsOf(j)[0]!, { libraryId: 'x' }),
      /recordings\[0\].*libraryId/,
    ],
    ['an id twice', (j) => Object.assign(recordingsOf(j)[1]!, { id: 't1' }), /recordings\[1\]\.id/],
    [
      'a file twice',
      (j) => Object.assign(recordingsOf(j)[1]!, { file: 'takes/Raise/A1_001.csv' }),
      /share a file/,
    ],
    [
      'a date that is none',
      (j) => Object.assign(recordingsOf(j)[0]!, { recordedAt: '1990-12-31T23:59:60Z' }),
      /not a date/,
    ],
    [
      'a mirrored mounting',
      (j) => Object.assign(libraryOf(j).target as Json, { mounting: [1, 0, 0, 0, 1, 0, 0, 0, -1] }),
      /mounting.*rotation/,
    ],
    [
      'a name of 101 letters',
      (j) => Object.assign(libraryOf(j), { name: 'x'.repeat(101) }),
      /library\.name/,
    ],
    [
      'trim backwards',
      (j) => Object.assign(recordingsOf(j)[0]!, { trim: { startMs: 9, endMs: 1 } }),
      /trim/,
    ],
  ]
  for (const [what, change, message] of faults) {
    test(`for ${what}, naming the place`, () => {
      const text = refusal(changed(change))
      expect(text).toMatch(/^library\/invalid: library\.json, /)
      expect(text).toMatch(message)
    })
  }

  test('never half: keys named __proto__ change nothing', () => {
    const files = unzipSync(writeLibraryFile(sampleLibrary()))
    const json = strFromU8(files['library.json'] ?? new Uint8Array())
    const evil = json.replace('"library": {', '"library": {"__proto__": {"polluted": 1},')
    const result = readLibraryFile(zipSync({ ...files, 'library.json': strToU8(evil) }))
    expect('polluted' in {}).toBe(false)
    if (result.ok) expect(Object.getPrototypeOf(result.value.library)).toBe(Object.prototype)
    if (result.ok) expect('polluted' in result.value.library).toBe(false)
  })
})
