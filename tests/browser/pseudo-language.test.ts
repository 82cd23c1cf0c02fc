import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { buildPages } from '../../src/build/build'
import { pseudoText } from '../../src/build/language/pseudo'
import { visitLinks } from '../../src/build/look/crawl'
import { type RunningServer, serveFolder } from '../../src/build/static-server'
import { describeWithTools } from '../support/tools'
import { plainTexts, textsOf } from './plain-texts'
import { openRig, type Rig } from './rig'

/** A narrow phone, CSS pixels. */
const PHONE = { width: 360, height: 740 }

describeWithTools('the app in a language that nobody speaks', ['chromium'], () => {
  let folder: string
  let server: RunningServer
  let rig: Rig
  const kinds: string[] = []
  const plain: string[] = []
  const wide: string[] = []
  let tag = ''

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'movewright-pseudo-'))
    await buildPages('pseudo', folder)
    server = await serveFolder({ folder, host: '127.0.0.1', port: 0 })
    rig = await openRig()
    await rig.page.setViewportSize(PHONE)
    await visitLinks(
      rig.page,
      `http://localhost:${server.port}/`,
      async ({ kind }) => {
        kinds.push(kind)
        tag = await rig.page.evaluate(() => document.documentElement.lang)
        plain.push(...plainTexts(await textsOf(rig.page)).map((text) => `${kind}: ${text}`))
        const over = await rig.page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        )
        if (over > 0) wide.push(`${kind} is ${over} px wider than the phone`)
      },
      pseudoText,
    )
  }, 900_000)
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
    rmSync(folder, { recursive: true, force: true })
  })

  it('shows every screen that links lead to, and says what it is written in', () => {
    expect(kinds).toEqual(
      expect.arrayContaining(['moves', 'try', 'proof', 'prop', 'gesture/:id', 'replay/:id']),
    )
    expect(kinds.length).toBeGreaterThan(30)
    expect(tag).toBe('en-XA')
  })

  it('has no word on any of them that is not of the words', () => {
    expect(plain).toEqual([])
  })

  it('is no wider than a narrow phone, though texts are a third longer', () => {
    expect(wide).toEqual([])
  })
})
