import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { DIST } from '../../src/build/paths'
import { type RunningServer, serveFolder } from '../../src/build/static-server'

/** Serves the built app on a free port. `npm test` builds it first; by hand: `npm run build`. */
export async function serveBuiltApp(port = 0): Promise<RunningServer & { url: string }> {
  if (!existsSync(join(DIST, 'index.html'))) {
    throw new Error('The app is not built, so its pages cannot be tested. Run: npm run build')
  }
  const server = await serveFolder({ folder: DIST, host: '127.0.0.1', port })
  return { ...server, url: `http://localhost:${server.port}/` }
}
