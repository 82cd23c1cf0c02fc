import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames as NamesOf } from 'idb'
import type { Withdrawal } from '../shared/collect/withdrawal'
import type { Library, Recording } from '../shared/model/library'
import type { SampleBlock } from '../shared/model/sample'
import type { KeptItem } from './store'

/** A library as it lies in the database, with what only storage cares about around it. */
export interface StoredLibrary {
  id: string
  /** RFC 3339 in UTC, or null. While set, the deletion can still be undone. */
  deletedAt: string | null
  library: Library
}

/**
 * Samples of one recording, a stretch after another. A recording in progress and a finished one
 * keep their samples in the same place, so that finishing moves nothing and writes facts only.
 */
export interface StoredChunk extends SampleBlock {
  recordingId: string
  /** 0, 1, 2 ... in time order. */
  index: number
}

/** Kinds of values that are kept beside a library: see `KeptItem`. */
export const ITEM_KINDS = ['models', 'sessions', 'results'] as const
export type ItemKind = (typeof ITEM_KINDS)[number]

interface ItemStore {
  key: string
  value: KeptItem
  indexes: { library: string }
}

export interface MovewrightDb extends DBSchema {
  libraries: { key: string; value: StoredLibrary }
  recordings: {
    key: string
    value: Recording
    /** `deleted` holds only what is deleted: null is no valid key. */
    indexes: { library: string; deleted: string }
  }
  /** Recordings in progress or interrupted, under the recording's id. */
  journals: { key: string; value: Recording }
  chunks: { key: [recordingId: string, index: number]; value: StoredChunk }
  /** Trained models with what was measured of them. */
  models: ItemStore
  /** Testers' sessions, running or done. */
  sessions: ItemStore
  /** What is left of withdrawals when their library was removed for good: see `Marks`. */
  marks: { key: string; value: { id: string; why: Withdrawal['why'] } }
  /** Results of long jobs, under the fingerprint of what they were computed from. */
  results: ItemStore
}

export type StoreNames = NamesOf<MovewrightDb>
export type Database = IDBPDatabase<MovewrightDb>
export type ReadTransaction = IDBPTransaction<MovewrightDb, StoreNames[], 'readonly'>
export type WriteTransaction = IDBPTransaction<MovewrightDb, StoreNames[], 'readwrite'>
export type UpgradeTransaction = IDBPTransaction<MovewrightDb, StoreNames[], 'versionchange'>

/** All chunks of one recording, in time order. */
export function chunksOf(recordingId: string): IDBKeyRange {
  return IDBKeyRange.bound([recordingId, 0], [recordingId, Number.POSITIVE_INFINITY])
}
