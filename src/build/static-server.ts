import { createReadStream, statSync } from 'node:fs'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import { createServer as createSecureServer } from 'node:https'
import type { AddressInfo, Server } from 'node:net'
import { extname, join, normalize, sep } from 'node:path'

const CONTENT_TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.md': 'text/markdown; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
}

/** Sensors, camera (for codes) and the board's serial port are the page's own; the rest is off. */
const PERMISSIONS = [
  ...['accelerometer', 'gyroscope', 'magnetometer', 'camera', 'serial', 'screen-wake-lock'],
  ...['fullscreen', 'web-share', 'clipboard-write', 'clipboard-read'],
]
  .map((feature) => `${feature}=(self)`)
  .concat(['geolocation', 'microphone', 'payment', 'usb', 'bluetooth'].map((off) => `${off}=()`))
  .join(', ')

export interface ServeOptions {
  folder: string
  /** Address to listen on; '0.0.0.0' for the whole local network. */
  host: string
  /** Taken if free, else the next free one of the twenty that follow. 0: any. */
  port: number
  /** With it, HTTPS. */
  certificate?: { key: string; cert: string }
}

export interface RunningServer {
  port: number
  /** Also ends open connections. */
  close(): Promise<void>
}

/** Serves a folder of static files, for a desk or a phone in the same network. */
export async function serveFolder(options: ServeOptions): Promise<RunningServer> {
  const answer = (request: IncomingMessage, response: ServerResponse) => {
    sendFile(options.folder, request, response)
  }
  const server = options.certificate
    ? createSecureServer(options.certificate, answer)
    : createServer(answer)
  await listenNear(server, options.host, options.port)
  return {
    port: (server.address() as AddressInfo).port,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}

async function listenNear(server: Server, host: string, wanted: number): Promise<void> {
  for (let port = wanted; port <= wanted + 20; port += 1) {
    if (await listen(server, host, port)) return
  }
  throw new Error(
    `Ports ${wanted} to ${wanted + 20} are all taken. Name another one: -- --port 5000`,
  )
}

/** False when the port is taken. */
function listen(server: Server, host: string, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const onError = (error: NodeJS.ErrnoException) => {
      server.off('listening', onListening)
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false)
      else reject(error)
    }
    const onListening = () => {
      server.off('error', onError)
      resolve(true)
    }
    server.once('error', onError)
    server.once('listening', onListening)
    server.listen(port, host)
  })
}

function sendFile(folder: string, request: IncomingMessage, response: ServerResponse): void {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { Allow: 'GET, HEAD' }).end()
    return
  }
  const file = fileFor(folder, request.url ?? '/')
  const facts = file === null ? undefined : statSync(file, { throwIfNoEntry: false })
  if (file === null || facts === undefined || !facts.isFile()) {
    response.writeHead(404, { 'Content-Type': 'text/plain' }).end('There is no such file.\n')
    return
  }
  const etag = `"${facts.size.toString(16)}-${facts.mtimeMs.toString(16)}"`
  const headers = {
    'Content-Type': CONTENT_TYPES[extname(file)] ?? 'application/octet-stream',
    // Names below assets/ carry a digest of the content; all others may change in place.
    'Cache-Control': file.includes(`${sep}assets${sep}`)
      ? 'public, max-age=31536000, immutable'
      : 'no-cache',
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    // What a meta element in the page cannot say; any host should send the same.
    'Permissions-Policy': PERMISSIONS,
    'Content-Security-Policy': "frame-ancestors 'none'",
    'Cross-Origin-Opener-Policy': 'same-origin',
    ETag: etag,
  }
  if (request.headers['if-none-match'] === etag) {
    response.writeHead(304, headers).end()
    return
  }
  response.writeHead(200, { ...headers, 'Content-Length': facts.size })
  if (request.method === 'HEAD') response.end()
  else createReadStream(file).pipe(response)
}

/** Null when the address is malformed or leads out of the folder. */
function fileFor(folder: string, address: string): string | null {
  try {
    const { pathname } = new URL(address, 'http://localhost')
    const path = normalize(join(folder, decodeURIComponent(pathname)))
    if (path.includes('\0') || !path.startsWith(normalize(folder + sep))) return null
    return pathname.endsWith('/') ? join(path, 'index.html') : path
  } catch {
    return null
  }
}
