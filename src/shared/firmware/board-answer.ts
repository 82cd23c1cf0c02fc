import { causeOf } from './difference-cause'
import { logLines, readSelfTestLog, vectorTitle } from './self-test-log'
import type { Vector } from './vector'

/** Where a board's answer leaves the phone's. */
export interface Difference {
  /** Name of the vector. */
  vector: string
  /** What the vector shows, from where it was made. */
  why: string
  /** Line of its event log, from 1. */
  line: number
  /** '' when nothing more was expected, or found. */
  expected: string
  found: string
  /** What this usually comes from and what to do: one or two sentences. */
  cause: string
}

export type BoardAnswer =
  /** The text holds no self-test log. */
  | { kind: 'unreadable'; message: string }
  /** The board runs another model. */
  | { kind: 'other-model'; found: string; message: string }
  | {
      /** 'part': what was run agrees, but not all was. */
      kind: 'agrees' | 'part' | 'differs'
      /** Vectors that agree, of those that the board ran. */
      agreed: number
      ran: number
      of: number
      /** The first; null when what was run agrees. */
      difference: Difference | null
      /** Names of vectors that the board did not run. */
      missing: string[]
      message: string
    }

/**
 * Compares what a board printed with what the phone's recogniser says to the same vectors.
 * @param text as copied from a terminal: line ends, prompts and text before it do not matter
 */
export function compareBoardAnswer(
  text: string,
  modelHash: string,
  vectors: readonly Vector[],
): BoardAnswer {
  const log = readSelfTestLog(text)
  if (log === null) return { kind: 'unreadable', message: unreadable(text) }
  if (log.modelHash !== modelHash) {
    const message =
      'The board runs another model than this library has now. Export the firmware again and flash it, or open the library it was exported from.'
    return { kind: 'other-model', found: log.modelHash, message }
  }
  const titles = vectors.map(vectorTitle)
  const missing = titles.filter((title) => !log.vectors.has(title))
  const differences = vectors.flatMap((vector, index) => {
    const found = log.vectors.get(titles[index] ?? '')
    return found ? differenceOf(vector, titles[index] ?? '', found) : []
  })
  const ran = vectors.length - missing.length
  const counts = { agreed: ran - differences.length, ran, of: vectors.length, missing }
  const [difference = null] = differences
  if (difference) {
    // A log that breaks off in its last vector says nothing against the board.
    const broken = !log.whole && differences.length === 1 && difference.found === ''
    if (!broken) return { kind: 'differs', difference, message: differs(counts), ...counts }
  }
  const whole = missing.length === 0 && difference === null && log.whole
  return {
    kind: whole ? 'agrees' : 'part',
    difference: null,
    message: whole
      ? `All ${ran} vectors agree: the board computes what the phone does.`
      : part(counts, log.whole),
    ...counts,
  }
}

function differenceOf(vector: Vector, title: string, found: readonly string[]): Difference[] {
  const expected = logLines(vector.log)
  const length = Math.max(expected.length, found.length)
  for (let at = 0; at < length; at++) {
    const [wanted = '', had = ''] = [expected[at], found[at]]
    if (wanted === had) continue
    const cause = causeOf(wanted, had)
    return [{ vector: title, why: vector.why, line: at + 1, expected: wanted, found: had, cause }]
  }
  return []
}

interface Counts {
  agreed: number
  ran: number
  of: number
}

function differs({ agreed, ran }: Counts): string {
  return `${ran - agreed} of ${ran} vectors differ from the phone. Start with the first.`
}

function part({ agreed, of }: Counts, whole: boolean): string {
  return whole
    ? `What the board ran agrees: ${agreed} of ${of} vectors. Run the others too, in parts if flash is short.`
    : `The log breaks off. Up to there ${agreed} of ${of} vectors agree. Copy it down to the line "done".`
}

function unreadable(text: string): string {
  return text.trim() === ''
    ? 'There is no text. Copy what the board printed, from "movewright 1" to "done".'
    : 'This holds no self-test log: there is no line "movewright 1". Check the speed of the serial port, and copy from that line to "done".'
}
