import { strFromU8, strToU8 } from 'fflate'
import * as v from 'valibot'

/** Kinds that a backup takes along. Results can be measured again from the takes. */
export const BACKUP_ITEM_KINDS = ['models', 'sessions'] as const

/** Something kept beside a library: see `KeptItem` of storage. */
export interface BackupItem {
  kind: (typeof BACKUP_ITEM_KINDS)[number]
  id: string
  keptAt: string
  value: unknown
}

const itemsSchema = v.array(
  v.strictObject({
    kind: v.picklist(BACKUP_ITEM_KINDS),
    id: v.pipe(v.string(), v.minLength(1), v.maxLength(400)),
    keptAt: v.string(),
    value: v.unknown(),
  }),
)

const ARRAYS = {
  Int8Array,
  Uint8Array,
  Int16Array,
  Uint16Array,
  Int32Array,
  Uint32Array,
  Float32Array,
  Float64Array,
} as const
type ArrayName = keyof typeof ARRAYS
/** A typed array as JSON: its kind, and its numbers as JSON has them. */
const TAG = '$array'

/** JSON of items; arrays of numbers of a fixed kind come back as that kind. */
export function itemsToBytes(items: readonly BackupItem[]): Uint8Array {
  return strToU8(JSON.stringify(items, (_key, value: unknown) => tagged(value)))
}

/** The items, or null when these bytes are none. Values are unchecked: their owners do that. */
export function itemsFromBytes(bytes: Uint8Array): BackupItem[] | null {
  try {
    const parsed = v.safeParse(
      itemsSchema,
      JSON.parse(strFromU8(bytes), (_key, one) => untagged(one)),
    )
    return parsed.success ? parsed.output : null
  } catch {
    return null
  }
}

function tagged(value: unknown): unknown {
  if (!ArrayBuffer.isView(value)) return value
  const name = value.constructor.name
  if (!(name in ARRAYS)) return null
  const numbers = [...(value as unknown as Iterable<number>)]
  return { [TAG]: name, numbers: numbers.map(jsonNumber) }
}

/** JSON has no NaN, no infinity and no negative zero. */
function jsonNumber(value: number): number | string {
  if (Object.is(value, -0)) return '-0'
  return Number.isFinite(value) ? value : String(value)
}

function untagged(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, TAG)) return value
  const { [TAG]: name, numbers } = value as { [TAG]: unknown; numbers?: unknown }
  if (typeof name !== 'string' || !Object.hasOwn(ARRAYS, name) || !Array.isArray(numbers)) {
    return value
  }
  return ARRAYS[name as ArrayName].from(numbers.map(Number))
}
