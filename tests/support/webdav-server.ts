import { type ChildProcess, spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { needTool } from '../../src/build/tools'

export interface WebdavServer {
  /** Of the root; the folder is below it. */
  url: string
  folderUrl: string
  /** The same folder on this disk. */
  folder: string
  close(): Promise<void>
}

export interface WebdavOptions {
  /** Files served beside the folder, such as the built app. */
  root?: string
  /** Asks for this name and password. */
  account?: { user: string; password: string }
  readOnly?: boolean
}

/** lighttpd with its WebDAV module on a free port, as a team would run it. */
export async function serveWebdav(options: WebdavOptions = {}): Promise<WebdavServer> {
  const base = mkdtempSync(join(tmpdir(), 'movewright-webdav-'))
  const folder = join(base, 'team')
  mkdirSync(folder)
  const port = await freePort()
  const config = join(base, 'server.conf')
  writeFileSync(config, configText(base, port, options))
  const child = spawn(needTool('lighttpd'), ['-D', '-f', config], {
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let said = ''
  child.stderr.on('data', (data) => (said += data))
  const url = `http://localhost:${port}/`
  await untilAnswers(url, child, () => said)
  return {
    url,
    folder,
    folderUrl: `${url}team/`,
    close: async () => {
      const ended = new Promise((resolve) => child.once('exit', resolve))
      child.kill('SIGKILL')
      await ended
      rmSync(base, { recursive: true, force: true })
    },
  }
}

function configText(
  base: string,
  port: number,
  { root, account, readOnly }: WebdavOptions,
): string {
  const users = join(base, 'users')
  if (account !== undefined) writeFileSync(users, `${account.user}:${account.password}\n`)
  const auth = `
    auth.backend = "plain"
    auth.backend.plain.userfile = "${users}"
    auth.require = ("/team/" => ("method" => "basic", "realm" => "team", "require" => "valid-user"))`
  return `
    server.modules = ("mod_auth", "mod_authn_file", "mod_alias", "mod_webdav")
    server.document-root = "${root ?? base}"
    server.port = ${port}
    server.bind = "127.0.0.1"
    index-file.names = ("index.html")
    mimetype.assign = (
      ".html" => "text/html", ".js" => "text/javascript", ".css" => "text/css",
      ".wasm" => "application/wasm", ".webmanifest" => "application/manifest+json",
      ".svg" => "image/svg+xml", ".png" => "image/png", ".json" => "application/json"
    )
    alias.url = ("/team/" => "${join(base, 'team')}/")
    $HTTP["url"] =~ "^/team/" {
      webdav.activate = "enable"
      webdav.is-readonly = "${readOnly ? 'enable' : 'disable'}"
    }
    ${account === undefined ? '' : auth}
  `
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer()
    server.once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() =>
        resolve(typeof address === 'object' && address !== null ? address.port : 0),
      )
    })
  })
}

async function untilAnswers(url: string, child: ChildProcess, said: () => string): Promise<void> {
  for (let attempt = 0; attempt < 100; attempt++) {
    if (child.exitCode !== null) throw new Error(`lighttpd ended: ${said()}`)
    const answered = await fetch(url).then(
      () => true,
      () => false,
    )
    if (answered) return
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
  throw new Error(`lighttpd did not answer: ${said()}`)
}
