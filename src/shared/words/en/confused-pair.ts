import { plural } from './numbers'

/** Two gestures that were taken for one another. */
export const CONFUSED_PAIR = {
  confused: ({
    first,
    second,
    hits,
    n,
  }: {
    first: string
    second: string
    hits: number
    n: number
  }) => `${first} and ${second} are confused in ${hits} of ${plural('take', n)}.`,
}
