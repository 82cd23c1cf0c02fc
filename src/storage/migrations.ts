import type { Database, UpgradeTransaction } from './schema'

/**
 * Takes the schema one version up. It must do all its work in the transaction it is given and must
 * not be async: a database whose async upgrade fails opens half made at the new version.
 */
export type SchemaStep = (db: Database, transaction: UpgradeTransaction) => void

function createStores(db: Database): void {
  db.createObjectStore('libraries', { keyPath: 'id' })
  const recordings = db.createObjectStore('recordings', { keyPath: 'id' })
  recordings.createIndex('library', 'libraryId')
  recordings.createIndex('deleted', 'deletedAt')
  db.createObjectStore('journals', { keyPath: 'id' })
  db.createObjectStore('chunks', { keyPath: ['recordingId', 'index'] })
}

function addItemStores(db: Database): void {
  for (const kind of ['models', 'sessions', 'results'] as const) {
    db.createObjectStore(kind, { keyPath: 'id' }).createIndex('library', 'libraryId')
  }
}

function addMarks(db: Database): void {
  db.createObjectStore('marks', { keyPath: 'id' })
}

/** Entry i takes version i to version i + 1. Released entries never change; new ones are added. */
export const SCHEMA_STEPS: readonly SchemaStep[] = [createStores, addItemStores, addMarks]

/** Version of the database, apart from that of the app and that of library files. */
export const SCHEMA_VERSION = SCHEMA_STEPS.length
