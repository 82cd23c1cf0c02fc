import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium, type Page } from 'playwright-core'
import { writeLibraryFile } from '../../../shared/format/library-file'
import { CHROMIUM_ARGUMENTS, PHONE_VIEWPORT } from '../../chromium'
import { DIST } from '../../paths'
import { serveFolder } from '../../static-server'
import { findTool } from '../../tools'
import type { BenchResult, Figure } from '../figure'
import { libraryOfTakes } from './many-takes'
import { benchRecording } from './record-fed'
import { peakOfPages } from './renderer-memory'

const TAKES = 10_000
const PATIENCE_MS = 900_000

/** Leaves in the page when the first screen with gestures was there, ms since the navigation. */
const WATCH_OPENING = `new MutationObserver((_, watch) => {
  if (document.querySelector('.gesture-card') === null) return
  watch.disconnect()
  window.openedMs = performance.now()
}).observe(document, { childList: true, subtree: true })`

/** What takes a real browser: a library of 10,000 takes opened and exported, and recording at 200 Hz. */
export async function benchInBrowser(recordMinutes: number): Promise<BenchResult> {
  if (findTool('chromium') === null) return without('Chromium was not found.')
  if (!existsSync(join(DIST, 'index.html'))) return without('The app is not built: npm run build.')
  const server = await serveFolder({ folder: DIST, host: '127.0.0.1', port: 0 })
  const url = `http://localhost:${server.port}/`
  try {
    const figures = await onProfile((profile) => benchLibrary(profile, url))
    const recorded = await onProfile((profile) =>
      onPage(profile, (page) => benchRecording(page, url, recordMinutes)),
    )
    return { figures: [...figures, ...recorded], skipped: [] }
  } finally {
    await server.close()
  }
}

async function benchLibrary(profile: string, url: string): Promise<Figure[]> {
  const file = join(profile, 'library.zip')
  writeFileSync(file, writeLibraryFile(await libraryOfTakes(TAKES)))
  const importS = await onPage(profile, (page) => importFile(page, url, file))
  // A browser of its own for each, so that one's memory is not the other's.
  const [openMs, openMib] = await onPage(profile, async (page) => {
    await page.goto(url)
    await page.locator('.gesture-card').first().waitFor({ timeout: PATIENCE_MS })
    const ms = await page.evaluate<number>('window.openedMs')
    await page.waitForTimeout(2000)
    return [ms, peakOfPages(profile)] as const
  })
  const [exportS, exportMib] = await onPage(profile, async (page) => {
    await page.goto(`${url}#/library`)
    const button = page.getByRole('button', { name: 'Export library file' })
    await button.waitFor({ timeout: PATIENCE_MS })
    const began = performance.now()
    const download = page.waitForEvent('download', { timeout: PATIENCE_MS })
    await button.click()
    await (await download).path()
    return [(performance.now() - began) / 1000, peakOfPages(profile)] as const
  })
  const note = `${TAKES} takes of about 3.4 s, Chromium, 390 by 844, load ${loadavg()[0]!.toFixed(1)}`
  const peak = `${note}; greatest resident set of the page's process, workers included`
  return [
    { figure: 'import_10000_takes_s', value: importS, unit: 's', note },
    {
      figure: 'open_library_10000_takes_ms',
      value: openMs,
      unit: 'ms',
      note: `from the navigation to the list of gestures, browser just started; ${note}`,
    },
    { figure: 'open_library_10000_takes_peak', value: openMib, unit: 'MiB', note: peak },
    { figure: 'export_10000_takes_s', value: exportS, unit: 's', note },
    { figure: 'export_10000_takes_peak', value: exportMib, unit: 'MiB', note: peak },
  ]
}

async function importFile(page: Page, url: string, file: string): Promise<number> {
  await page.goto(`${url}#/library`)
  const input = page.locator('input[type=file][accept*=zip]').first()
  await input.waitFor({ state: 'attached', timeout: PATIENCE_MS })
  const began = performance.now()
  await input.setInputFiles(file)
  await page.locator('.gesture-card').first().waitFor({ timeout: PATIENCE_MS })
  return (performance.now() - began) / 1000
}

/** A browser started on the profile with one page, and ended. */
async function onPage<T>(profile: string, work: (page: Page) => Promise<T>): Promise<T> {
  const context: BrowserContext = await chromium.launchPersistentContext(profile, {
    executablePath: findTool('chromium')!,
    headless: true,
    args: CHROMIUM_ARGUMENTS,
    viewport: PHONE_VIEWPORT,
    acceptDownloads: true,
  })
  try {
    const page = context.pages()[0] ?? (await context.newPage())
    await page.addInitScript(WATCH_OPENING)
    return await work(page)
  } finally {
    await context.close()
  }
}

async function onProfile<T>(work: (profile: string) => Promise<T>): Promise<T> {
  const profile = mkdtempSync(join(tmpdir(), 'movewright-speed-'))
  try {
    return await work(profile)
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 })
  }
}

function without(why: string): BenchResult {
  return { figures: [], skipped: [`opening, exporting and recording in a browser: ${why}`] }
}
