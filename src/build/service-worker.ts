import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { build } from 'vite'
import type { PrecachedFile } from '../shared/protocol/precached-file'
import { ENGLISH, words } from './language/words'
import { listFiles } from './list-files'
import { repositoryPath } from './paths'

/** Files that are not needed to run the app. */
const LEFT_OUT =
  /^(service-worker\.js|third-party-licences\.md|screenshot\.png|schema\/.*|.*\.map)$/

/** Writes service-worker.js to an app built in a language; it knows every file by name and digest. */
export async function buildServiceWorker(folder: string, language = ENGLISH): Promise<void> {
  await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    plugins: [words(language)],
    define: { PRECACHED_FILES: JSON.stringify(filesToKeep(folder)) },
    build: {
      outDir: folder,
      emptyOutDir: false,
      target: 'es2022',
      reportCompressedSize: false,
      // A classic script: not every browser runs a service worker as a module.
      lib: {
        entry: repositoryPath('workers/service/main.ts'),
        formats: ['iife'],
        name: 'serviceWorker',
        fileName: () => 'service-worker.js',
      },
    },
  })
}

/** What the service worker keeps, and so all that running the app takes. */
export function filesToKeep(folder: string): PrecachedFile[] {
  return listFiles(folder)
    .filter((path) => !LEFT_OUT.test(path))
    .map((path) => ({ path, integrity: integrityOf(join(folder, path)) }))
}

/** In the form of the W3C's Subresource Integrity, which fetch() checks by itself. */
function integrityOf(file: string): string {
  return `sha256-${createHash('sha256').update(readFileSync(file)).digest('base64')}`
}
