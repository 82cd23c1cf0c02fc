import { isDeepStrictEqual } from 'node:util'
import type { Result } from '../../shared/model/result'
import type { Random } from '../../shared/statistics/random'

/** What a reader made of one altered input. Whatever it throws is a crash. */
export type Verdict = 'refused' | 'same' | { wrong: string }

/** A kind of file that strangers may hand over. */
export interface FuzzSubject {
  name: string
  /** Share of all cases. */
  share: number
  alter(random: Random): Uint8Array
  judge(input: Uint8Array): Verdict | Promise<Verdict>
}

/** Accepted once, a value must survive being written and read again. */
export function roundTrip<T, W>(
  first: Result<T>,
  write: (value: T) => W,
  read: (written: W) => Result<T>,
): Verdict {
  if (!first.ok) return 'refused'
  const second = read(write(first.value))
  if (!second.ok) return { wrong: `accepted, but not when written again: ${second.message}` }
  return isDeepStrictEqual(first.value, second.value)
    ? 'same'
    : { wrong: 'accepted, but different when written and read again' }
}
