import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { DIST } from '../../src/build/paths'
import { type RunningServer, serveFolder } from '../../src/build/static-server'
import { describeWithTools } from '../support/tools'
import { openRig, type Rig } from './rig'

/** A host that hands out the built app with one file missing or altered. */
describeWithTools('an app whose files a host has damaged', ['chromium'], () => {
  let folder: string
  let server: RunningServer
  let rig: Rig

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'movewright-damaged-'))
    cpSync(DIST, folder, { recursive: true })
    server = await serveFolder({ folder, host: '127.0.0.1', port: 0 })
    rig = await openRig()
  })
  afterEach(async () => {
    await rig.close()
    rig.profile.remove()
    await server.close()
    rmSync(folder, { recursive: true, force: true })
  })

  const see = (text: string | RegExp, timeout = 30_000) =>
    rig.page.getByText(text).first().waitFor({ timeout })
  const assets = (ending: string) =>
    readdirSync(join(folder, 'assets'))
      .filter((name) => name.endsWith(ending))
      .map((name) => join(folder, 'assets', name))

  /** One bit of each wasm wrong, and still a program that a browser would run. */
  function flipOneBit(): void {
    for (const path of assets('.wasm')) {
      const bytes = readFileSync(path)
      for (let at = bytes.length - 1; ; at--) {
        bytes[at]! ^= 1
        if (WebAssembly.validate(bytes)) break
        bytes[at]! ^= 1
      }
      expect(WebAssembly.validate(bytes), 'without the digest it would answer, wrongly').toBe(true)
      writeFileSync(path, bytes)
    }
  }

  const damages: [what: string, sentence: RegExp, damage: () => void][] = [
    [
      'missing',
      /could not be loaded: the host answered 404/,
      () => {
        for (const path of assets('.wasm')) rmSync(path)
      },
    ],
    [
      'cut short',
      /altered or cut short/,
      () => {
        for (const path of assets('.wasm'))
          writeFileSync(path, readFileSync(path).subarray(0, 20_000))
      },
    ],
    ['altered in one bit that still runs', /altered or cut short/, flipOneBit],
  ]

  it.each(damages)(
    'with the recogniser %s says so, keeps the takes and trains nothing',
    async (_what, sentence, damage) => {
      damage()
      await rig.open(`http://localhost:${server.port}/`)
      await rig.page.getByRole('button', { name: 'Load the lantern parade demo' }).tap()
      await see(/\d+ takes/, 90_000)
      await rig.page.goto(`http://localhost:${server.port}/#/proof`)
      await rig.page
        .getByRole('button', { name: /^Measure/ })
        .first()
        .tap()
      await see(sentence)
      await see('Your takes are untouched.')
    },
  )

  it('whose script does not arrive says what to do', async () => {
    const page = readFileSync(join(folder, 'index.html'), 'utf8')
    const main = /src="\.\/(assets\/[^"]+\.js)"/.exec(page)?.[1]
    writeFileSync(join(folder, main!), readFileSync(join(folder, main!)).subarray(0, 500))
    await rig.open(`http://localhost:${server.port}/`)
    await see(/Starting/)
    await see(/reload while online/)
  })
})
