import { strFromU8, unzipSync } from 'fflate'
import { beforeEach, describe, expect, test } from 'vitest'
import { answerOf, lightOf } from '../../src/shared/light/library-light'
import { lightFindings } from '../../src/shared/light/safety'
import type { App } from '../../src/state/app'
import { answer, blinking, effect } from '../shared/light/examples'
import { openApp } from './app-bench'

let app: App
let first = ''

beforeEach(async () => {
  app = await openApp()
  await app.library.addDemo()
  first = app.library.current.value?.gestures[0]?.id ?? ''
})

const library = () => app.library.current.value!

describe('answers', () => {
  test('of a gesture and at rest are stored and found again', async () => {
    const ring = answer({ kind: 'sparkle' })
    expect(await app.light.setAnswer(first, ring)).toEqual({ ok: true, value: null })
    expect(answerOf(library().gestures, first)).toEqual(ring)
    const idle = answer({ kind: 'breathe', rounds: 0 })
    await app.light.setAnswer('idle', idle)
    expect(lightOf(library()).answers.idle).toEqual(idle)
    await app.library.open(library().id)
    expect(answerOf(library().gestures, first)).toEqual(ring)
  })

  test('that no player takes are refused in words and not stored', async () => {
    const before = library()
    const wrong = answer({ kind: 'steady', periodMs: 0 })
    expect(await app.light.setAnswer(first, wrong)).toMatchObject({ code: 'light/period' })
    expect(library()).toBe(before)
  })

  test('leave the trained model fresh: light is not what training reads', async () => {
    await app.train()
    await app.light.setAnswer(first, answer({ kind: 'sparkle' }))
    expect(app.model.value).toMatchObject({ state: 'done', stale: false })
  })

  test('come along in the library file, with chains to the gestures’ new ids', async () => {
    const second = library().gestures[1]!.id
    await app.light.setAnswer(first, answer({ kind: 'steady', next: second }))
    const file = await app.exportLibrary()
    expect(file.ok && (await app.importLibrary(file.value.bytes)).ok).toBe(true)
    const [one, two] = library().gestures
    expect(one?.id).not.toBe(first)
    expect(one?.answer?.light).toEqual(effect({ kind: 'steady', next: two!.id }))
  })
})

describe('light over a limit', () => {
  beforeEach(async () => {
    await app.light.setAnswer(first, { ...answer({}), light: blinking(8, [255, 0, 0]) })
  })

  test('is not exported without a written acknowledgement', async () => {
    expect(await app.exportFirmware()).toMatchObject({
      code: 'firmware/light',
      message: expect.stringContaining('8 flashes in a second, 3 are the limit'),
    })
  })

  test('is exported with one, and its words stand in the exported files', async () => {
    const findings = lightFindings(await app.light.player(), library())
    expect((await app.light.acknowledge('ok', findings)).ok).toBe(false)
    const words = 'Only behind smoked glass, seen by the bench crew.'
    expect((await app.light.acknowledge(words, findings)).ok).toBe(true)
    const made = await app.exportFirmware()
    const files = made.ok ? unzipSync(made.value.bytes) : {}
    for (const path of ['README.md', 'effects/effect_table.c']) {
      const text = strFromU8(files[path] ?? new Uint8Array())
      expect(text).toContain(words)
      expect(text).toContain('8 red flashes in a second')
    }
  })

  test('an acknowledgement covers what it was written for and nothing else', async () => {
    const findings = lightFindings(await app.light.player(), library())
    await app.light.acknowledge('Only behind smoked glass.', findings)
    await app.light.setAnswer(first, { ...answer({}), light: blinking(10, [255, 0, 0]) })
    expect(await app.exportFirmware()).toMatchObject({ code: 'firmware/light' })
    await app.light.withdraw()
    expect(lightOf(library()).acknowledgement).toBeNull()
  })
})

test('the warning of flashing light is accepted for the visit', () => {
  expect(app.light.warned.value).toBe(false)
  app.light.acceptWarning()
  expect(app.light.warned.value).toBe(true)
})
