import type { Hand, Trim } from '../model/library'

/** What may be changed of a recording after it was made; its samples never are. */
export const LABEL_FIELDS = ['gestureId', 'testerCode', 'hand', 'trim', 'note'] as const
export type LabelField = (typeof LABEL_FIELDS)[number]

export interface LabelValues {
  /** Null for background. */
  gestureId: string | null
  testerCode: string
  hand: Hand
  trim: Trim | null
  note: string
}

/**
 * One change of one label. Copies of a recording that were changed apart keep all their changes when
 * they meet; what nobody replaced is what counts.
 */
export type LabelChange = { [F in LabelField]: ChangeOf<F> }[LabelField]

interface ChangeOf<F extends LabelField> {
  /** 32 hex digits, drawn at random; of the value as recorded, derived from the value. */
  id: string
  field: F
  value: LabelValues[F]
  /** When it was changed, or recorded; RFC 3339 in UTC, by the clock of that device. */
  at: string
  /** Ids of the changes it replaces; empty for the value as recorded. */
  over: string[]
}
