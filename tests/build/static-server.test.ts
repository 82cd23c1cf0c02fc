import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type RunningServer, serveFolder } from '../../src/build/static-server'

describe('the server of npm start', () => {
  let folder: string
  let server: RunningServer

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'movewright-server-'))
    mkdirSync(join(folder, 'dist', 'assets'), { recursive: true })
    writeFileSync(join(folder, 'secret.txt'), 'not for the network')
    writeFileSync(join(folder, 'dist', 'index.html'), '<p>page</p>')
    writeFileSync(join(folder, 'dist', 'assets', 'core-1a2b.wasm'), Uint8Array.of(0, 97, 115, 109))
    writeFileSync(join(folder, 'dist', 'manifest.webmanifest'), '{}')
    server = await serveFolder({ folder: join(folder, 'dist'), host: '127.0.0.1', port: 0 })
  })

  afterAll(async () => {
    await server.close()
    rmSync(folder, { recursive: true })
  })

  const get = (path: string, init?: RequestInit) =>
    fetch(`http://127.0.0.1:${server.port}${path}`, init)

  it('gives index.html for a folder', async () => {
    const response = await get('/?from=home')
    expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8')
    expect(await response.text()).toBe('<p>page</p>')
  })

  it('gives wasm its own type, without which browsers do not compile while loading', async () => {
    const response = await get('/assets/core-1a2b.wasm')
    expect(response.headers.get('content-type')).toBe('application/wasm')
    expect((await response.arrayBuffer()).byteLength).toBe(4)
  })

  it('lets files with a digest in the name be kept for ever, and all others be asked for', async () => {
    const cacheControl = async (path: string) => (await get(path)).headers.get('cache-control')
    expect(await cacheControl('/assets/core-1a2b.wasm')).toContain('immutable')
    expect(await cacheControl('/manifest.webmanifest')).toBe('no-cache')
  })

  it('answers 304 when the browser has this very file', async () => {
    const etag = (await get('/')).headers.get('etag') ?? ''
    expect((await get('/', { headers: { 'if-none-match': etag } })).status).toBe(304)
    expect((await get('/', { headers: { 'if-none-match': '"other"' } })).status).toBe(200)
  })

  it('answers 404 to what is not there and 405 to what is not a question', async () => {
    expect((await get('/none.js')).status).toBe(404)
    expect((await get('/assets')).status).toBe(404)
    expect((await get('/', { method: 'POST' })).status).toBe(405)
  })

  // fetch() tidies such paths before it sends them; an attacker does not.
  it.each(['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/%00', '/%zz', '//['])(
    'does not leave its folder for %s',
    async (path) => {
      expect(await statusOfRawPath(server.port, path)).toBe(404)
    },
  )

  it('takes the next free port when the wanted one is taken', async () => {
    const second = await serveFolder({ folder, host: '127.0.0.1', port: server.port })
    expect(second.port).toBeGreaterThan(server.port)
    await second.close()
  })
})

function statusOfRawPath(port: number, path: string): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    request({ host: '127.0.0.1', port, path }, (response) => {
      response.resume()
      resolve(response.statusCode)
    })
      .on('error', reject)
      .end()
  })
}
