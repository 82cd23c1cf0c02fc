import { createHash } from 'node:crypto'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import { contentId } from '../../../src/shared/collect/content-id'
import {
  readSessionFile,
  sessionFileName,
  writeSessionFile,
} from '../../../src/shared/collect/session-file'
import { sampleSessionFile } from './samples'

/** As it reads back: every recording with its content id. */
function withIds(file = sampleSessionFile()) {
  return {
    ...file,
    recordings: file.recordings.map(({ recording, samples }) => ({
      recording: { ...recording, contentId: contentId(samples) },
      samples,
    })),
  }
}

function refusal(bytes: Uint8Array): string {
  const read = readSessionFile(bytes)
  return read.ok ? 'read' : `${read.code}: ${read.message}`
}

function changed(
  change: (json: Record<string, unknown>, files: Record<string, Uint8Array>) => void,
) {
  const files = unzipSync(writeSessionFile(sampleSessionFile()))
  const json = JSON.parse(strFromU8(files['session.json']!))
  change(json, files)
  return zipSync({ ...files, 'session.json': strToU8(JSON.stringify(json)) })
}

describe('a session file', () => {
  test('reads back equal in every fact and every bit', () => {
    expect(readSessionFile(writeSessionFile(sampleSessionFile()))).toEqual({
      ok: true,
      value: withIds(),
    })
  })

  test('has the same bytes and name whenever it is written', () => {
    const [one, other] = [sampleSessionFile(), sampleSessionFile()].map(writeSessionFile)
    expect(one).toEqual(other)
    const digest = createHash('sha256').update(one!).digest('hex').slice(0, 32)
    expect(sessionFileName(sampleSessionFile().session, one!)).toBe(`session-K7Q4MXA-${digest}.zip`)
  })

  test('altered by one bit, at every fifth byte, is refused or says the same', () => {
    const bytes = writeSessionFile(sampleSessionFile(1))
    const whole = readSessionFile(bytes)
    const tried = { all: 0, refused: 0 }
    for (let at = 0; at < bytes.length; at += 5) {
      const altered = bytes.slice()
      altered[at]! ^= 1 << ((at / 5) % 8)
      const read = readSessionFile(altered)
      if (read.ok) expect(read).toEqual(whole)
      else tried.refused++
      if (!read.ok) expect(read.message).toMatch(/^\S[\s\S]+\.$/)
      tried.all++
    }
    // Dates and attributes in the directory may change without harm.
    expect(tried.refused / tried.all).toBeGreaterThan(0.9)
  })

  test('whose samples were changed and packed again is refused, naming the recording', () => {
    const bytes = changed((_, files) => {
      const path = 'takes/Ring/K7Q4MXA_001.csv'
      const text = strFromU8(files[path]!)
      files[path] = strToU8(text.replace(/\r\n0,-?\d/, '\r\n0,9'))
    })
    expect(refusal(bytes)).toBe(
      'library/altered: takes/Ring/K7Q4MXA_001.csv does not hold the samples that session.json says: it was altered on the way. Bring the file over again.',
    )
  })

  test('of 0 bytes is refused in one clear sentence', () => {
    expect(refusal(new Uint8Array(0))).toBe(
      'session/empty: The file is empty (0 bytes): send it from the phone once more.',
    )
  })

  test('that is a ZIP bomb is refused before it is unpacked', () => {
    const bomb = zipSync({ 'session.json': new Uint8Array(40 * 1048576) })
    expect(bomb.length).toBeLessThan(100_000)
    expect(refusal(bomb)).toMatch(/^zip\/too-large: "session\.json" would take 40\.0 MiB/)
  })

  test.each<[string, (json: Record<string, unknown>) => void, RegExp]>([
    [
      'of a newer version',
      (j) => Object.assign(j, { formatVersion: 2 }),
      /^session\/newer: .*Update/,
    ],
    ['of another kind', (j) => Object.assign(j, { format: 'x' }), /^session\/format: /],
    ['with an unknown member', (j) => Object.assign(j, { x: 1 }), /^session\/invalid: .*x/],
    [
      'without consent',
      (j) => Reflect.deleteProperty(j.session as object, 'consentAt'),
      /^session\/invalid: .*consentAt/,
    ],
    [
      'with a recording of another session',
      (j) => Object.assign((j.recordings as object[])[0]!, { sessionId: 'x' }),
      /^session\/invalid: .*another session/,
    ],
    [
      'with a take of a gesture that was not asked for',
      (j) => Object.assign((j.recordings as object[])[0]!, { gestureId: 'pour' }),
      /^session\/invalid: .*none of the session/,
    ],
  ])('%s is refused', (_, change, expected) => {
    expect(refusal(changed(change))).toMatch(expected)
  })
})
