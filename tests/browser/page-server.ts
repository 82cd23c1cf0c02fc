import { createServer } from 'vite'
import { repositoryPath } from '../../src/build/paths'

export interface PageServer {
  /** Address of a test page by its file name; ask for another host to leave localhost. */
  pageUrl(fileName: string, host?: string): string
  close(): Promise<void>
}

/** Serves tests/browser/pages with the sources behind them, on a free port. */
export async function servePages(cacheFolder: string): Promise<PageServer> {
  const server = await createServer({
    configFile: false,
    root: repositoryPath('.'),
    cacheDir: `${cacheFolder}/vite`,
    // Found beforehand: a dependency found late reloads the page under the test.
    optimizeDeps: { include: ['idb'], noDiscovery: true },
    server: { port: 0, host: '127.0.0.1', hmr: false, allowedHosts: true },
    logLevel: 'error',
  })
  await server.listen()
  const address = server.httpServer?.address()
  const port = typeof address === 'object' ? address?.port : undefined
  return {
    pageUrl: (fileName, host = 'localhost') =>
      `http://${host}:${port}/tests/browser/pages/${fileName}`,
    close: () => server.close(),
  }
}
