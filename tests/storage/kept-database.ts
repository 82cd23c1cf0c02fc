import { readFileSync } from 'node:fs'
import { openDB } from 'idb'
import { repositoryPath } from '../../src/build/paths'

/** A database as some version left it, with everything that IndexedDB knows of it. */
export interface KeptDatabase {
  version: number
  stores: {
    name: string
    keyPath: string | string[]
    indexes: { name: string; keyPath: string | string[] }[]
    values: unknown[]
  }[]
}

const ARRAYS = { Uint8Array, Float32Array, Float64Array } as const
/** A typed array in JSON: its kind and its bytes, little-endian. */
interface Tagged {
  $array: keyof typeof ARRAYS
  base64: string
}

/** Everything in a database, as JSON. How a version's fixture is made: write, then keep this. */
export async function keepDatabase(name: string): Promise<string> {
  const db = await openDB(name)
  const stores = await Promise.all(
    [...db.objectStoreNames].map(async (name) => {
      const store = db.transaction(name).store
      const indexes = [...store.indexNames].map((index) => {
        return { name: index, keyPath: store.index(index).keyPath }
      })
      return { name, keyPath: store.keyPath, indexes, values: await store.getAll() }
    }),
  )
  const { version } = db
  db.close()
  return JSON.stringify({ version, stores }, (_key, value: unknown) => {
    if (!ArrayBuffer.isView(value)) return value
    const { buffer, byteOffset, byteLength } = value
    const base64 = Buffer.from(buffer, byteOffset, byteLength).toString('base64')
    return { $array: value.constructor.name, base64 }
  })
}

/** A fixture, `tests/storage/database-VERSION.json`. */
export function keptDatabase(version: number): KeptDatabase {
  const text = readFileSync(repositoryPath(`tests/storage/database-${version}.json`), 'utf8')
  return JSON.parse(text, (_key, value: unknown) => {
    const { $array, base64 } = (value ?? {}) as Partial<Tagged>
    if ($array === undefined || base64 === undefined) return value
    // A copy of its own, from its first byte on: Node's small buffers share one.
    return new ARRAYS[$array](new Uint8Array(Buffer.from(base64, 'base64')).buffer)
  })
}

/** Makes that very database, by IndexedDB alone. */
export async function layDown(name: string, { version, stores }: KeptDatabase): Promise<void> {
  const db = await openDB(name, version, {
    upgrade(fresh, _from, _to, tx) {
      for (const { name, keyPath, indexes, values } of stores) {
        const store = fresh.createObjectStore(name, { keyPath })
        for (const index of indexes) store.createIndex(index.name, index.keyPath)
        for (const value of values) void tx.objectStore(name).add(value)
      }
    },
  })
  db.close()
}
