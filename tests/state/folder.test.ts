import './browser-globals'
import { createServer, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { Window } from 'happy-dom'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { SESSION_LIMITS } from '../../src/shared/collect/session-file'
import { sha256Hex } from '../../src/shared/format/sha256'
import { createFolder, type Fetched, type FolderState } from '../../src/state/collect/folder'

type Answer = (response: ServerResponse) => void

const whole =
  (content: Uint8Array | string): Answer =>
  (response) =>
    response.end(content)

/** Digests in the names are those of what belongs there. */
const named = (tester: string, content: string) =>
  `session-${tester}-${sha256Hex(new TextEncoder().encode(content)).slice(0, 32)}.zip`

const LISTED_FIRST = named('A', 'session of A')
const OTHERS = ['B', 'C', 'D'].map((tester) => named(tester, `session of ${tester}`))

const files = new Map<string, Answer>()
const server = createServer(({ method, url = '' }, response) => {
  if (method === 'PROPFIND') {
    const hrefs = [...files.keys()].map((name) => `<response><href>/f/${name}</href></response>`)
    response.writeHead(207).end(`<multistatus xmlns="DAV:">${hrefs.join('')}</multistatus>`)
  } else files.get(url.split('/').at(-1) ?? '')?.(response)
})
let folder: FolderState

beforeEach(async () => {
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const href = `http://127.0.0.1:${(server.address() as AddressInfo).port}/f/`
  const page = new Window()
  Object.assign(globalThis, { document: page.document, DOMParser: page.DOMParser })
  Object.defineProperty(globalThis, 'location', { value: { href }, configurable: true })
  files.clear()
  for (const tester of ['A', 'B', 'C', 'D']) {
    files.set(named(tester, `session of ${tester}`), whole(`session of ${tester}`))
  }
  folder = createFolder()
  expect(await folder.use(href, '', '')).toMatchObject({ ok: true })
})

afterEach(() => {
  server.closeAllConnections()
  server.close()
})

async function fetchNew(): Promise<{ names: string[]; unread: Fetched['unread'] }> {
  const fetched = await folder.fetchNew()
  if (!fetched.ok) throw new Error(fetched.message)
  const { files, unread } = fetched.value
  return { names: files.map(({ name }) => name), unread }
}

it.each<[string, Answer, RegExp]>([
  ['is not given out', (response) => response.writeHead(403).end(), /to this account/],
  ['makes the server fail', (response) => response.writeHead(500).end(), /answered with 500/],
  ['went meanwhile', (response) => response.writeHead(404).end(), /in the meantime/],
  ['is damaged', whole('session o'), /not whole/],
  [
    'is larger than any session',
    (response) => {
      response.writeHead(200, { 'Content-Length': SESSION_LIMITS.maxPackedBytes + 1 })
      response.flushHeaders()
    },
    /larger than any session/,
  ],
])('a file that %s keeps no other away, is told, and tried again', async (_, answer, why) => {
  files.set(LISTED_FIRST, answer)
  const told = [{ name: LISTED_FIRST, wrong: expect.stringMatching(why) }]
  expect(await fetchNew()).toEqual({ names: OTHERS, unread: told })
  expect(await fetchNew()).toEqual({ names: [], unread: told })
  files.set(LISTED_FIRST, whole('session of A'))
  expect(await fetchNew()).toEqual({ names: [LISTED_FIRST], unread: [] })
  expect(await fetchNew()).toEqual({ names: [], unread: [] })
})

it('without a network, those that came are there and the others are told', async () => {
  const lost: Answer = (response) => void response.destroy()
  for (const name of OTHERS) files.set(name, lost)
  const { names, unread } = await fetchNew()
  expect(names).toEqual([LISTED_FIRST])
  expect(unread.map(({ name }) => name)).toEqual(OTHERS)
  expect(await folder.fetchNew()).toMatchObject({ ok: false, code: 'webdav/network' })
})
