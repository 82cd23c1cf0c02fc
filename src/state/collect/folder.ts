import { type ReadonlySignal, signal } from '@preact/signals'
import { sha256Hex } from '../../shared/format/sha256'
import { fail, ok, type Result } from '../../shared/model/result'
import { COLLECTING } from '../../shared/words/en/collecting'
import { folderAddress } from '../../webdav/folder-address'
import { type FolderAccess, openFolder, type SessionFolder } from '../../webdav/session-folder'
import type { OutFile } from '../exports'
import type { BroughtFile, UnreadFile } from './bring'
import { readKept, writeKept } from './kept-folder'

/** A folder on a server that a team shares; off until a person names one. */
export interface FolderState {
  /** Empty while it is off. */
  address: ReadonlySignal<string>
  user: ReadonlySignal<string>
  /** What is being done, for people; null when nothing is. */
  busy: ReadonlySignal<string | null>
  /** Names a folder and looks into it. The password is kept for this visit only. */
  use(address: string, user: string, password: string): Promise<Result<null>>
  turnOff(): void
  /** Session files that were not fetched in this visit; what cannot be read keeps no other away. */
  fetchNew(): Promise<Result<Fetched>>
  /** Adds files that are not there yet; tells how many were and how many are new. */
  send(files: readonly OutFile[]): Promise<Result<{ stored: number; there: number }>>
  /** One file to a folder that a plan names, without a password; this phone's own folder stays. */
  sendOnce(address: string, file: OutFile): Promise<Result<'stored' | 'there'>>
}

export interface Fetched {
  files: BroughtFile[]
  /** Those that could not be read, and why; they are tried again with the next fetch. */
  unread: UnreadFile[]
}

/** So many files in a row that the network did not bring: the others are not waited for. */
const LOST_IN_A_ROW = 3
const LOST: readonly string[] = ['webdav/network', 'webdav/late']

const OFF = fail('folder/off', COLLECTING.noFolder)

export function createFolder(): FolderState {
  const kept = readKept()
  const address = signal(kept.address)
  const user = signal(kept.user)
  const busy = signal<string | null>(null)
  const fetched = new Set<string>()
  let password = ''

  const open = (): SessionFolder | null => {
    if (address.peek() === '') return null
    return folderAt({ address: address.peek(), user: user.peek(), password })
  }
  const say = (what: string) => {
    busy.value = what
  }
  const during = async <T>(what: string, work: () => Promise<T>): Promise<T> => {
    busy.value = what
    try {
      return await work()
    } finally {
      busy.value = null
    }
  }
  const set = (nextAddress: string, nextUser: string, nextPassword: string) => {
    address.value = nextAddress
    user.value = nextUser
    password = nextPassword
    fetched.clear()
  }

  return {
    address,
    user,
    busy,
    async use(text, name, secret) {
      const checked = folderAddress(text, { page: location.href, policy: pagePolicy() })
      if (!checked.ok) return checked
      const access = { address: checked.value, user: name.trim(), password: secret }
      const listed = await during(COLLECTING.lookingIntoFolder, () => folderAt(access).list())
      if (!listed.ok) return listed
      set(checked.value, name.trim(), secret)
      writeKept({ address: checked.value, user: name.trim() })
      return ok(null)
    },
    turnOff() {
      set('', '', '')
      writeKept(null)
    },
    async sendOnce(text, { fileName, bytes }) {
      const checked = folderAddress(text, { page: location.href, policy: pagePolicy() })
      if (!checked.ok) return checked
      return folderAt({ address: checked.value, user: '', password: '' }).add(fileName, bytes)
    },
    async fetchNew() {
      const folder = open()
      if (folder === null) return OFF
      return during(COLLECTING.fetchingFromFolder, () => fetchFrom(folder, fetched, say))
    },
    async send(files) {
      const folder = open()
      if (folder === null) return OFF
      return during(COLLECTING.sendingToFolder, () => sendTo(folder, files, say))
    },
  }
}

function folderAt(access: FolderAccess): SessionFolder {
  return openFolder(access, {
    fetch: (...request) => fetch(...request),
    parseXml: (text) => new DOMParser().parseFromString(text, 'application/xml'),
    digest: sha256Hex,
  })
}

/** Files whose names are not in `known`, which learns them. */
async function fetchFrom(
  folder: SessionFolder,
  known: Set<string>,
  say: (what: string) => void,
): Promise<Result<Fetched>> {
  const listed = await folder.list()
  if (!listed.ok) return listed
  const files: BroughtFile[] = []
  const unread: UnreadFile[] = []
  let lost = 0
  const fresh = listed.value.filter((one) => !known.has(one))
  for (const [index, name] of fresh.entries()) {
    say(COLLECTING.fetching(index + 1, fresh.length))
    const got = await folder.read(name)
    if (got.ok) files.push({ name, bytes: async () => got.value })
    else unread.push({ name, wrong: got.message })
    lost = !got.ok && LOST.includes(got.code) ? lost + 1 : 0
    if (got.ok || lost < LOST_IN_A_ROW) continue
    if (files.length === 0) return got
    for (const rest of fresh.slice(index + 1)) unread.push({ name: rest, wrong: got.message })
    break
  }
  for (const { name } of files) known.add(name)
  return ok({ files, unread })
}

async function sendTo(
  folder: SessionFolder,
  files: readonly OutFile[],
  say: (what: string) => void,
): Promise<Result<{ stored: number; there: number }>> {
  const count = { stored: 0, there: 0 }
  for (const [index, { fileName, bytes }] of files.entries()) {
    say(COLLECTING.sending(index + 1, files.length))
    const added = await folder.add(fileName, bytes)
    if (!added.ok) return added
    count[added.value] += 1
  }
  return ok(count)
}

/** The policy that the build put into the page; none in development. */
function pagePolicy(): string {
  const meta = document.querySelector('meta[http-equiv="Content-Security-Policy"]')
  return meta?.getAttribute('content') ?? ''
}
