import { FAULTS } from '../../shared/board/simulate/faults'
import { drawTrial, findingsOf } from '../../shared/board/simulate/trial'
import { wilson } from '../../shared/statistics/wilson'

/** Seeds that no limit was set on and no test uses. */
const SOUND_SEED = 1_000_000
const FAULTY_SEED = 2_000_000

export interface BoardCheckFigure {
  figure: string
  value: number
  unit: string
  hits: number
  n: number
  low: number
  high: number
}

/**
 * Detection and false alarms of the board check over simulated boards: sound ones within their data
 * sheets, and ones with a single fault of a drawn kind and strength. Detected means that the fault is
 * among the findings; named first is counted apart. Nothing but simulated logs is measured here.
 * @param logs of each: sound and faulty
 */
export function* boardCheckFigures(logs = 2000): Generator<BoardCheckFigure> {
  let alarms = 0
  for (let i = 0; i < logs; i++) {
    if (findingsOf(drawTrial(SOUND_SEED + i, null)).length > 0) alarms++
  }
  yield figure('boardcheck_false_alarm', alarms, logs)
  let found = 0
  let first = 0
  const missed = new Map<string, number>()
  for (let i = 0; i < logs; i++) {
    const fault = FAULTS[i % FAULTS.length]!
    const codes = findingsOf(drawTrial(FAULTY_SEED + i, fault)).map(({ code }) => code)
    if (codes.includes(fault.expected)) found++
    else missed.set(fault.name, (missed.get(fault.name) ?? 0) + 1)
    if (codes[0] === fault.expected) first++
  }
  yield figure('boardcheck_detection', found, logs)
  yield figure('boardcheck_named_first', first, logs)
  for (const [name, count] of missed) {
    const n = Math.ceil((logs - FAULTS.findIndex((fault) => fault.name === name)) / FAULTS.length)
    yield figure(`boardcheck_missed_${name.replaceAll(' ', '_')}`, count, n)
  }
}

function figure(name: string, hits: number, n: number): BoardCheckFigure {
  const { value, low, high } = wilson(hits, n)
  return { figure: name, value, unit: 'share', hits, n, low, high }
}
