import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { unzipSync } from 'fflate'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import { reportDataOf } from '../../src/build/report-data'
import type { RunningServer } from '../../src/build/static-server'
import { generateDemoLibrary } from '../../src/shared/demo/demo-library'
import { evaluateLibrary } from '../../src/shared/evaluation/evaluate-library'
import { readLibraryFile, writeLibraryFile } from '../../src/shared/format/library-file'
import { sha256Hex } from '../../src/shared/format/sha256'
import type { FullLibrary } from '../../src/shared/model/library'
import { reportFile } from '../../src/shared/report/report'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { openRig, type Rig } from './rig'

/** Three gestures of two testers with their background: measured in seconds. */
async function smallLibrary(): Promise<FullLibrary> {
  const { library, recordings } = await generateDemoLibrary(3)
  const gestures = library.gestures.slice(0, 3)
  const ids = new Set(gestures.map(({ id }) => id))
  return {
    library: { ...library, name: 'North gate <b>east</b>', gestures },
    recordings: recordings.filter(
      ({ recording }) =>
        recording.testerCode <= 'T02' &&
        (recording.kind === 'background' || ids.has(recording.gestureId)),
    ),
  }
}

/** The page without what differs from making to making: times, and which build made it. */
function lasting(text: string): string {
  return text
    .replace(/\d{4}-\d{2}-\d{2} \d{2}:\d{2} UTC/g, 'THEN')
    .replace(/<th scope="row">Movewright<\/th><td>.*<\/td>/, 'BUILD')
}

describeWithTools('the report in the built app', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig
  const folder = mkdtempSync(join(tmpdir(), 'movewright-report-'))

  beforeAll(async () => {
    writeFileSync(join(folder, 'library.zip'), writeLibraryFile(await smallLibrary()))
    server = await serveBuiltApp()
    rig = await openRig()
    await rig.open(server.url)
    await rig.page.locator('input[type=file]').first().setInputFiles(join(folder, 'library.zip'))
    await rig.page.getByText('48 takes').first().waitFor({ timeout: 30_000 })
  }, 90_000)
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
    rmSync(folder, { recursive: true, force: true })
  })

  const sheet = () => rig.page.locator('.report')

  async function download(action: string): Promise<Uint8Array> {
    const [file] = await Promise.all([
      rig.page.waitForEvent('download'),
      rig.page.getByRole('button', { name: action }).tap(),
    ])
    return readFileSync(await file.path())
  }

  it('says what was not measured before anything was', async () => {
    await rig.page.goto(`${server.url}#/report`)
    await sheet().getByText('Recognition was not measured').waitFor({ timeout: 60_000 })
    expect(await sheet().locator('h1').textContent()).toBe('North gate <b>east</b>')
  }, 90_000)

  it('has the figures of Proof once they are measured', async () => {
    await rig.page.goto(`${server.url}#/proof`)
    await rig.page.getByRole('button', { name: 'Measure', exact: true }).tap()
    const shown = await rig.page.locator('.proof-figure').textContent({ timeout: 120_000 })
    const [, share, count] = /([\d.]+\s%) (\d+\/\d+) takes/.exec(shown ?? '') ?? []
    await rig.page.getByRole('link', { name: /^Report:/ }).tap()
    const row = sheet().locator('tr', { hasText: 'understood' }).first()
    await row.waitFor({ timeout: 60_000 })
    const cells = await row.locator('td').allTextContents()
    expect(cells.slice(0, 2)).toEqual([share, count])
  }, 180_000)

  it('writes the very file that npm run evaluate writes from the exported library file', async () => {
    const fromPage = new TextDecoder().decode(await download('HTML file'))
    await rig.page.goto(`${server.url}#/prop`)
    const exported = await download('Export library file')
    await rig.page.goto(`${server.url}#/report`)
    expect(fromPage).toContain(sha256Hex(exported))
    const read = readLibraryFile(exported)
    if (!read.ok) throw new Error(read.message)
    const core = await loadCoreForNode()
    const evaluation = await evaluateLibrary(core, read.value, 'tester', undefined, {
      matcher: 'template',
    })
    if (!evaluation.ok) throw new Error(evaluation.message)
    const wishes = { matcher: 'template', grip: false } as const
    const data = await reportDataOf(core, read.value, evaluation.value, wishes, () => {})
    if (!data.ok) throw new Error(data.message)
    expect(lasting(fromPage)).toBe(lasting(reportFile(data.value)))
  }, 120_000)

  it('gives its plots as PNG and SVG, at three pixels a unit', async () => {
    const files = unzipSync(await download('Plots'))
    const names = Object.keys(files)
    expect(names).toContain('confusion.png')
    expect(names).toContain('recall-precision.svg')
    expect(names.filter((file) => file.startsWith('ribbon-')).length).toBe(6)
    const png = files['recall-precision.png']
    expect([...png.subarray(1, 4)]).toEqual([...'PNG'].map((letter) => letter.charCodeAt(0)))
    expect(new DataView(png.buffer, png.byteOffset).getUint32(16)).toBe(3 * 640)
    // A picture of nothing packs into far less.
    expect(png.length).toBeGreaterThan(5000)
  }, 60_000)

  it('opened as a file it asks for nothing else, and fits a phone', async () => {
    const path = join(folder, 'report.html')
    writeFileSync(path, await download('HTML file'))
    const page = await rig.context.newPage()
    const asked: string[] = []
    page.on('request', (request) => asked.push(request.url()))
    await page.setViewportSize({ width: 360, height: 780 })
    await page.goto(`file://${path}`)
    expect(asked).toEqual([`file://${path}`])
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(360)
    await page.close()
  }, 60_000)

  it.each(['A4', 'Letter'] as const)(
    'prints on %s without the bar and the buttons',
    async (format) => {
      await rig.page.emulateMedia({ media: 'print' })
      expect(await rig.page.locator('.bar').isVisible()).toBe(false)
      expect(await rig.page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false)
      const pdf = await rig.page.pdf({ format })
      const pages = new TextDecoder('latin1').decode(pdf).match(/\/Type\s*\/Page\b/g)?.length ?? 0
      expect(pages).toBeGreaterThanOrEqual(3)
      expect(pages).toBeLessThanOrEqual(7)
      await rig.page.emulateMedia({ media: null })
    },
    60_000,
  )
})
