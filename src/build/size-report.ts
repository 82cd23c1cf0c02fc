import { statSync } from 'node:fs'
import { join } from 'node:path'
import { firstLoadFiles, gzipBytes } from './first-load'
import { filesToKeep } from './service-worker'

export interface Size {
  what: string
  bytes: number
  gzipBytes: number
}

/** What a visitor of a built app loads, in the groups worth watching. */
export function measure(folder: string): Size[] {
  const kept = filesToKeep(folder).map(({ path }) => path)
  const sizeOf = (what: string, files: string[]): Size => ({
    what,
    bytes: sum(files.map((file) => statSync(join(folder, file)).size)),
    gzipBytes: gzipBytes(folder, files),
  })
  return [
    sizeOf('first load (page, scripts, styles)', firstLoadFiles(folder)),
    sizeOf(
      'recogniser (wasm)',
      kept.filter((file) => file.endsWith('.wasm')),
    ),
    sizeOf('service worker', ['service-worker.js']),
    sizeOf('everything, as kept for offline use', kept),
  ]
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
