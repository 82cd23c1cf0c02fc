import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Rolldown } from 'vite'
import { DIST } from './paths'
import { filesToKeep } from './service-worker'

export interface Size {
  what: string
  bytes: number
  gzipBytes: number
}

/** What a visitor loads, in the groups worth watching. */
export function measure(bundle: Rolldown.RolldownOutput): Size[] {
  const kept = filesToKeep(DIST).map(({ path }) => path)
  return [
    sizeOf('first load (page, scripts, styles)', firstLoad(bundle)),
    sizeOf(
      'recogniser (wasm)',
      kept.filter((file) => file.endsWith('.wasm')),
    ),
    sizeOf('service worker', ['service-worker.js']),
    sizeOf('everything, as kept for offline use', kept),
  ]
}

/** The page, its entry, and what the entry imports at once; lazy parts and workers left out. */
function firstLoad(bundle: Rolldown.RolldownOutput): string[] {
  const chunks = new Map(
    bundle.output.flatMap((file) => (file.type === 'chunk' ? [[file.fileName, file]] : [])),
  )
  const wanted = new Set<string>(['index.html'])
  const visit = (fileName: string): void => {
    const chunk = chunks.get(fileName)
    if (chunk === undefined || wanted.has(fileName)) return
    wanted.add(fileName)
    chunk.imports.forEach(visit)
  }
  for (const chunk of chunks.values()) if (chunk.isEntry) visit(chunk.fileName)
  const page = readFileSync(join(DIST, 'index.html'), 'utf8')
  for (const [, href] of page.matchAll(/rel="stylesheet"[^>]*href="\.\/([^"]+)"/g)) {
    if (href !== undefined) wanted.add(href)
  }
  return [...wanted]
}

function sizeOf(what: string, files: string[]): Size {
  const contents = files
    .map((file) => join(DIST, file))
    .filter((path) => existsSync(path))
    .map((path) => readFileSync(path))
  return {
    what,
    bytes: sum(contents.map((content) => content.length)),
    gzipBytes: sum(contents.map((content) => gzipSync(content).length)),
  }
}

export function report(sizes: Size[]): string {
  const lines = sizes.map(({ what, bytes, gzipBytes }) => {
    return `  ${what.padEnd(38)} ${kilobytes(bytes)}  ${kilobytes(gzipBytes)} gzip`
  })
  return ['Built dist:', ...lines].join('\n')
}

function kilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`.padStart(11)
}

function sum(numbers: number[]): number {
  return numbers.reduce((total, number) => total + number, 0)
}
