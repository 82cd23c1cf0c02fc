import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium, type Page } from 'playwright-core'
import { DIST, repositoryPath } from './paths'
import { serveFolder } from './static-server'
import { needTool } from './tools'

// Takes the picture in README.md from the built app with the demo library, three of the four places side
// by side. Run it after a change of the screens:
//   npm run build && npx tsx src/build/screenshot.ts

const PHONE = { width: 390, height: 844 }
const GAP_PX = 16

async function visitPlaces(page: Page, url: string): Promise<Buffer[]> {
  await page.goto(url)
  await page.getByRole('button', { name: 'Load the lantern parade demo' }).click()
  await page.locator('.moves-grid').waitFor({ timeout: 60_000 })
  await page.waitForTimeout(1500) // ribbons draw themselves once
  const moves = await page.screenshot()

  await page.getByRole('link', { name: 'Proof' }).click()
  await page.getByRole('button', { name: 'Measure' }).click()
  await page.locator('.proof-result').waitFor({ timeout: 120_000 })
  const proof = await page.screenshot()

  await page.getByRole('link', { name: 'Try' }).click()
  await page.getByRole('button', { name: /simulated phone/ }).click()
  await page.getByRole('button', { name: 'Swing' }).click({ timeout: 60_000 })
  await page.waitForTimeout(4500)
  const tried = await page.screenshot()

  return [moves, tried, proof]
}

async function putSideBySide(browser: BrowserContext, pictures: Buffer[]): Promise<Buffer> {
  const page = await browser.newPage()
  const width = pictures.length * (PHONE.width + GAP_PX) + GAP_PX
  await page.setViewportSize({ width, height: PHONE.height + 2 * GAP_PX })
  const images = pictures.map(
    (png) => `<img src="data:image/png;base64,${png.toString('base64')}">`,
  )
  await page.setContent(`
    <style>
      body { margin: 0; padding: ${GAP_PX}px; display: flex; gap: ${GAP_PX}px; background: #262b38; }
    </style>
    ${images.join('')}`)
  await page.waitForLoadState('load')
  return page.screenshot()
}

const profile = mkdtempSync(join(tmpdir(), 'movewright-screenshot-'))
const server = await serveFolder({ folder: DIST, host: '127.0.0.1', port: 0 })
const browser = await chromium.launchPersistentContext(profile, {
  executablePath: needTool('chromium'),
  args: ['--no-sandbox', '--disable-gpu'],
  viewport: PHONE,
  colorScheme: 'dark',
})
try {
  const pictures = await visitPlaces(await browser.newPage(), `http://localhost:${server.port}/`)
  const picture = await putSideBySide(browser, pictures)
  writeFileSync(repositoryPath('public/screenshot.png'), picture)
  console.log(`public/screenshot.png: ${picture.length} bytes`)
} finally {
  await browser.close()
  await server.close()
  rmSync(profile, { recursive: true, force: true })
}
