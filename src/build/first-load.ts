import { readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import { gzipSync } from 'node:zlib'

/** What a first visitor may load before the first screen, compressed; a test holds it. */
export const FIRST_LOAD_BUDGET_BYTES = 92_160

/**
 * What a built page loads before anything else: itself, its scripts and styles, and what those
 * scripts import at once. Workers, wasm, icons and what is imported later are left out.
 * @returns paths from the folder, with forward slashes
 */
export function firstLoadFiles(folder: string): string[] {
  const wanted = new Set<string>(['index.html'])
  const visit = (path: string): void => {
    if (wanted.has(path)) return
    wanted.add(path)
    if (!path.endsWith('.js')) return
    const code = readFileSync(join(folder, path), 'utf8')
    for (const specifier of staticImports(code)) visit(posix.join(posix.dirname(path), specifier))
  }
  const page = readFileSync(join(folder, 'index.html'), 'utf8')
  for (const [tag] of page.matchAll(/<(?:script|link)\b[^>]*>/g)) {
    const address = /\b(?:src|href)="\.\/([^"]+\.(?:js|css))"/.exec(tag)?.[1]
    if (address !== undefined) visit(address)
  }
  return [...wanted]
}

/** Addresses after `import … from` and `export … from`; those of `import(…)` come later. */
function staticImports(code: string): string[] {
  const found = code.matchAll(/\b(?:import|export)\b[^"'`();]*["'](\.[^"']+)["']/g)
  return Array.from(found, ([, specifier = '']) => specifier)
}

/** Bytes of files as they are sent: each one compressed by itself. */
export function gzipBytes(folder: string, files: readonly string[]): number {
  return files
    .map((file) => gzipSync(readFileSync(join(folder, file))).length)
    .reduce((total, bytes) => total + bytes, 0)
}
