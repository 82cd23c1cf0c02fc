import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Core } from '../../shared/core/core'
import { DEMO_SEED, generateDemoLibrary } from '../../shared/demo/demo-library'
import { trainModel } from '../../shared/training/train-model'
import { buildApart } from '../built-apart'
import { launchChromium } from '../chromium'
import { firstLoadFiles, gzipBytes } from '../first-load'
import { filesToKeep } from '../service-worker'
import { type RunningServer, serveFolder } from '../static-server'
import { installLine, missingTools } from '../tools'
import { buildCore } from '../wasm'
import type { BenchResult, Figure } from './figure'
import { interactiveMs } from './interactive'

const LOADS = 7
/** What nothing can be faster than: one button and no script. */
const EMPTY_PAGE = '<!doctype html><html lang="en"><title>Empty</title><button>Nothing</button>'

/** Bytes of the core, of the demo's model and of the first load, and how soon that answers. */
export async function benchSize(core: Core): Promise<BenchResult> {
  const wasm = readFileSync(await buildCore())
  const trained = trainModel(core, await generateDemoLibrary(DEMO_SEED))
  if (!trained.ok) throw new Error(trained.message)
  const built = buildApart()
  try {
    const start = await measureStart(built.folder)
    return {
      figures: [
        bytes('core_wasm_bytes', wasm.length),
        bytes('core_wasm_gzip_bytes', gzipSync(wasm, { level: 9 }).length),
        bytes('demo_model_bytes', trained.value.bytes.length),
        bytes('demo_ram_bytes_estimated', trained.value.ramBytes),
        bytes('first_load_bytes', gzipBytes(built.folder, firstLoadFiles(built.folder))),
        bytes('offline_bytes', gzipBytes(built.folder, keptFiles(built.folder))),
        ...start.figures,
      ],
      skipped: start.skipped,
    }
  } finally {
    built.remove()
  }
}

function bytes(figure: string, value: number): Figure {
  return { figure, value, unit: 'B' }
}

function keptFiles(folder: string): string[] {
  return filesToKeep(folder).map(({ path }) => path)
}

async function measureStart(appFolder: string): Promise<BenchResult> {
  const missing = missingTools(['chromium'])
  if (missing.length > 0) {
    return { figures: [], skipped: [`interactive_ms_throttled needs: ${installLine(missing)}`] }
  }
  const emptyFolder = mkdtempSync(join(tmpdir(), 'movewright-empty-'))
  writeFileSync(join(emptyFolder, 'index.html'), EMPTY_PAGE)
  const servers: RunningServer[] = []
  for (const folder of [appFolder, emptyFolder]) {
    servers.push(await serveFolder({ folder, host: '127.0.0.1', port: 0 }))
  }
  const browser = await launchChromium()
  try {
    const urls = servers.map(({ port }) => `http://localhost:${port}/`)
    const [app = 0, empty = 0] = await interactiveMs(browser, urls, LOADS)
    return { figures: [startFigure(app, empty)], skipped: [] }
  } finally {
    await browser.close()
    for (const server of servers) await server.close()
    rmSync(emptyFolder, { recursive: true, force: true })
  }
}

function startFigure(appMs: number, emptyMs: number): Figure {
  return {
    figure: 'interactive_ms_throttled',
    value: appMs / emptyMs,
    unit: 'times an empty page',
    note: `${appMs.toFixed(0)} ms against ${emptyMs.toFixed(0)} ms: medians of ${LOADS} first visits, processor slowed 4 times`,
  }
}
