import { spawnSync } from 'node:child_process'
import { pathToFileURL } from 'node:url'
import { build } from 'vite'
import { chosenLanguage } from './language/words'
import { DIST, repositoryPath } from './paths'
import { buildServiceWorker } from './service-worker'
import { measure, report } from './size-report'
import { configOf } from './vite.config'

/** Compiles the core to wasm, bundles the app, writes the service worker; leaves all in dist/. */
export async function buildApp(): Promise<void> {
  const language = chosenLanguage(process.env.MOVEWRIGHT_LANGUAGE ?? '')
  compileCoreApart()
  await buildPages(language, DIST)
  console.log(report(measure(DIST)))
}

/** Page, workers and service worker in a language, around a core that is compiled already. */
export async function buildPages(language: string, folder: string): Promise<void> {
  // A NODE_ENV left over in the shell would give a development bundle.
  process.env.NODE_ENV = 'production'
  const config = configOf(language)
  await build({
    ...config,
    build: { ...config.build, outDir: folder },
    configFile: false,
    logLevel: 'warn',
  })
  await buildServiceWorker(folder, language)
}

/** In a process of its own: the compiler keeps some 500 MB until its process ends. */
export function compileCoreApart(): void {
  const script = repositoryPath('src/build/wasm.ts')
  const { status } = spawnSync(process.execPath, ['--import', 'tsx', script], { stdio: 'inherit' })
  if (status !== 0) throw new Error('The core was not compiled; its messages are above.')
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await buildApp()
