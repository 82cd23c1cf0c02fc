import { median } from '../../statistics/summary'
import { BOARD_EVIDENCE } from '../../words/en/board-evidence'
import { BOARD_SAMPLES } from '../../words/en/board-finding-samples'
import { type BoardLog, rowCount } from '../log/board-log'
import { type BenchLog, intervalsMs, rateOfIntervals } from './bench-log'
import type { Evidence, Finding } from './finding'
import { DROPPED_LIMIT, GAP_FACTOR, RATE_LIMIT } from './limits'

const FEWEST_INTERVALS = 20

/** Order of times, evenness and rate of all logs that have times. */
export function checkTiming(bench: BenchLog): Finding[] {
  const timed = bench.parts.map(({ log }) => log).filter((log) => rowCount(log) > FEWEST_INTERVALS)
  const logs = timed.filter((log) => log.tMs !== null)
  if (logs.length === 0) return []
  const back = timeBackwards(logs)
  if (back !== null) return [back]
  const mixed = rateMixed(logs)
  const found = [mixed ?? rateOff(bench, logs), dropped(logs)]
  return found.filter((finding) => finding !== null)
}

function timeBackwards(logs: readonly BoardLog[]): Finding | null {
  for (const log of logs) {
    const row = intervalsMs(log).findIndex((dt) => dt < 0)
    if (row < 0) continue
    const [before, after] = [log.tMs![row]!, log.tMs![row + 1]!]
    return {
      code: 'time-backwards',
      ...BOARD_SAMPLES.timeBackwards(row + 2, before - after),
      evidence: intervalTrace(log),
    }
  }
  return null
}

/** Quarters of a log, or logs among each other, at different rates. */
function rateMixed(logs: readonly BoardLog[]): Finding | null {
  const rates: { log: BoardLog; rate: number }[] = []
  for (const log of logs) {
    const all = intervalsMs(log)
    const pieces = Math.min(4, Math.floor(all.length / FEWEST_INTERVALS))
    for (let i = 0; i < pieces; i++) {
      const piece = all.slice((i * all.length) / pieces, ((i + 1) * all.length) / pieces)
      // Arrival times say nothing on short stretches: bytes wait in buffers.
      const rate = rateOfIntervals(piece, log.clock)
      if (log.clock === 'board' && rate > 0) rates.push({ log, rate })
    }
  }
  if (rates.length < 2) return null
  const sorted = [...rates].sort((a, b) => a.rate - b.rate)
  const [slow, fast] = [sorted[0]!, sorted.at(-1)!]
  if (fast.rate / slow.rate <= 1 + RATE_LIMIT) return null
  return {
    code: 'rate-mixed',
    ...BOARD_SAMPLES.rateMixed(slow.rate, fast.rate),
    evidence: intervalTrace(slow.log),
  }
}

function rateOff(bench: BenchLog, logs: readonly BoardLog[]): Finding | null {
  const wanted = bench.target.rateHz
  const intervals = logs.flatMap(intervalsMs)
  const rate = rateOfIntervals(intervals, logs[0]!.clock)
  if (!(Math.abs(rate / wanted - 1) > RATE_LIMIT)) return null
  return {
    code: 'rate-off',
    ...BOARD_SAMPLES.rateOff(rate, wanted),
    evidence: {
      kind: 'bars',
      unit: 'Hz',
      bars: [
        {
          label: BOARD_EVIDENCE.rate,
          value: rate,
          low: wanted * (1 - RATE_LIMIT),
          high: wanted * (1 + RATE_LIMIT),
        },
      ],
    },
  }
}

function dropped(logs: readonly BoardLog[]): Finding | null {
  let missing = 0
  let total = 0
  let worst: { log: BoardLog; gaps: number } | null = null
  for (const log of logs) {
    if (log.clock !== 'board') continue
    const all = intervalsMs(log)
    const usual = median(all.filter((dt) => dt > 0))
    const gaps = all.filter((dt) => dt > GAP_FACTOR * usual)
    missing += gaps.reduce((sum, dt) => sum + Math.round(dt / usual) - 1, 0)
    total += all.length
    if (worst === null || gaps.length > worst.gaps) worst = { log, gaps: gaps.length }
  }
  const share = missing / (total + missing)
  if (worst === null || missing < 3 || !(share > DROPPED_LIMIT)) return null
  return {
    code: 'dropped',
    ...BOARD_SAMPLES.dropped(missing, share, GAP_FACTOR),
    evidence: intervalTrace(worst.log),
  }
}

function intervalTrace(log: BoardLog): Evidence {
  const all = intervalsMs(log)
  const usual = median(all.filter((dt) => dt > 0))
  const odd = all.findIndex((dt) => dt < 0 || dt > GAP_FACTOR * usual)
  const values = all.slice(Math.max(0, odd - 60), Math.max(0, odd - 60) + 240)
  return {
    kind: 'trace',
    lines: [{ label: BOARD_EVIDENCE.step, values }],
    durationS: values.reduce((sum, dt) => sum + Math.abs(dt), 0) / 1000,
    unit: 'ms',
  }
}
