import { FAULTS } from '../../shared/board/simulate/faults'
import { drawTrial, findingsOf } from '../../shared/board/simulate/trial'
import { wilson } from '../../shared/statistics/wilson'

import { type BenchResult, type Figure, rateFigure } from './figure'

const LOGS = 2000
/** Seeds that no limit was set on and no test uses. */
const SOUND_SEED = 1_000_000
const FAULTY_SEED = 2_000_000

/**
 * Detection and false alarms of the board check over simulated boards: sound ones within their data
 * sheets, and ones with a single fault of a drawn kind and strength. Detected means that the fault is
 * among the findings; named first is counted apart. Nothing but simulated logs is measured here.
 * @param logs of each: sound and faulty
 */
export function benchBoardCheck(logs = LOGS): BenchResult {
  const figures: Figure[] = []
  let alarms = 0
  for (let i = 0; i < logs; i++) {
    if (findingsOf(drawTrial(SOUND_SEED + i, null)).length > 0) alarms++
  }
  figures.push(figure('boardcheck_false_alarm', alarms, logs, 'sound boards with any finding'))
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
  const note = `${FAULTS.length} kinds of faults in turn`
  figures.push(figure('boardcheck_detection', found, logs, note))
  figures.push(figure('boardcheck_named_first', first, logs, note))
  for (const [name, count] of missed) {
    const n = Math.ceil((logs - FAULTS.findIndex((fault) => fault.name === name)) / FAULTS.length)
    figures.push(
      figure(`boardcheck_missed_${name.replaceAll('-', '_')}`, count, n, 'faults of this kind'),
    )
  }
  return { figures, skipped: [] }
}

function figure(name: string, hits: number, n: number, note: string): Figure {
  return rateFigure(name, wilson(hits, n), `${note}; simulated boards`)
}
