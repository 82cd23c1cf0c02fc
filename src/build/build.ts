import { spawnSync } from 'node:child_process'
import { pathToFileURL } from 'node:url'
import { build } from 'vite'
import { DIST, repositoryPath } from './paths'
import { buildServiceWorker } from './service-worker'
import { measure, report } from './size-report'
import config from './vite.config'

/** Compiles the core to wasm, bundles the app, writes the service worker; leaves all in dist/. */
export async function buildApp(): Promise<void> {
  compileCoreApart()
  // A NODE_ENV left over in the shell would give a development bundle.
  process.env.NODE_ENV = 'production'
  await build({ ...config, configFile: false, logLevel: 'warn' })
  await buildServiceWorker(DIST)
  console.log(report(measure(DIST)))
}

/** In a process of its own: the compiler keeps some 500 MB until its process ends. */
export function compileCoreApart(): void {
  const script = repositoryPath('src/build/wasm.ts')
  const { status } = spawnSync(process.execPath, ['--import', 'tsx', script], { stdio: 'inherit' })
  if (status !== 0) throw new Error('The core was not compiled; its messages are above.')
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await buildApp()
