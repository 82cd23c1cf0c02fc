import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { chromium } from 'playwright-core'
import { CHROMIUM_ARGUMENTS } from './chromium'
import { type Met, visitEveryScreen } from './look/crawl'
import { photographer } from './look/photograph'
import { DIST } from './paths'
import { serveFolder } from './static-server'
import { needTool } from './tools'

// Pictures of every screen of the built app, at four sizes and held sideways, by night and by day:
//   npm run build && npx tsx src/build/look.ts FOLDER
// FOLDER gets a folder for each size and theme, with one PNG a screen, numbered as they were met; `whole`
// holds each screen unrolled to its full length.

const folder = process.argv[2]
if (folder === undefined) {
  console.error('Name a folder for the pictures: npx tsx src/build/look.ts FOLDER')
  process.exit(1)
}

const profile = mkdtempSync(join(tmpdir(), 'movewright-look-'))
const server = await serveFolder({ folder: DIST, host: '127.0.0.1', port: 0 })
const browser = await chromium.launchPersistentContext(profile, {
  executablePath: needTool('chromium'),
  args: CHROMIUM_ARGUMENTS,
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  reducedMotion: 'reduce',
})
try {
  mkdirSync(resolve(folder), { recursive: true })
  const page = browser.pages()[0] ?? (await browser.newPage())
  const photograph = photographer(page, resolve(folder))
  const met = await visitEveryScreen(page, `http://localhost:${server.port}/`, async (one: Met) => {
    console.log(one.kind)
    await photograph(one)
  })
  console.log(`${met.length} screens in ${folder}`)
} finally {
  await browser.close()
  await server.close()
  rmSync(profile, { recursive: true, force: true })
}
