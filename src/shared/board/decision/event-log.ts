import type { CoreEvent } from '../../core/core'
import { causeOf } from '../../firmware/difference-cause'
import { eventLine } from '../../firmware/vector'
import { fail, ok, type Result } from '../../model/result'
import { BOARD_DECISION } from '../../words/en/board-decision-trouble'

/** Words of an `event` line behind its name (FORMAT.md, "Event log"). */
const WORDS = 11

/**
 * The `event` lines of what a device printed, one space between words. Anything before `event` in a line,
 * such as a time that a terminal put there, and all other lines are left out.
 * Codes: 'events/none', 'events/line' for one that is cut off.
 */
export function readEventLines(text: string): Result<string[]> {
  const found: string[] = []
  for (const [index, line] of text.split(/\r\n|\n|\r/).entries()) {
    const at = line.search(/\bevent /)
    if (at < 0) continue
    const words = line.slice(at).trim().split(/\s+/)
    if (words.length !== WORDS) {
      return fail(
        'events/line',
        BOARD_DECISION.eventCutOff({ line: index + 1, words: words.length, of: WORDS }),
      )
    }
    found.push(words.join(' '))
  }
  if (found.length === 0) {
    return fail('events/none', BOARD_DECISION.noEvents)
  }
  return ok(found)
}

export interface LineComparison {
  same: boolean
  /** Events that agree before the first that does not. */
  agreeing: number
  total: number
  /** The first that differ; one of them missing where a log ends. */
  first: {
    expected: string | null
    found: string | null
    /** What this usually comes from, and what to do. */
    cause: string
  } | null
}

/** A device's event log against what this core says of the same samples, word for word. */
export function compareEventLog(
  events: readonly CoreEvent[],
  found: readonly string[],
): LineComparison {
  const expected = events.map(eventLine)
  const total = Math.max(expected.length, found.length)
  let agreeing = 0
  while (agreeing < total && expected[agreeing] === found[agreeing]) agreeing++
  const same = agreeing === total
  const [wanted = null, had = null] = [expected[agreeing], found[agreeing]]
  const first = { expected: wanted, found: had, cause: causeOf(wanted ?? 'end', had ?? '') }
  return { same, agreeing, total, first: same ? null : first }
}
