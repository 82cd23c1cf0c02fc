import { median } from '../../statistics/summary'
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
      title: 'Time goes backwards',
      seen: `Row ${row + 2} stands ${(before - after).toFixed(1)} ms before row ${row + 1}.`,
      causes: [
        'The counter of the time stamp is narrower than it is printed and began anew.',
        'The board was reset while it logged.',
        'Rows come from two buffers and are printed in the wrong order, or the log was sorted.',
      ],
      next: [
        'Look whether the step is a power of two in the counter’s own unit: 65536, 16777216.',
        'Print a line at start-up, so that a reset can be seen.',
      ],
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
    title: 'The rate changes',
    seen: `Samples come at ${slow.rate.toFixed(1)} Hz in one stretch and at ${fast.rate.toFixed(1)} Hz in another.`,
    causes: [
      'Something else keeps the firmware busy: printing, a radio, the light.',
      'Logs made with different settings are mixed.',
      'The sensor changes between its power modes by itself.',
    ],
    next: [
      'Set a pin while the firmware reads and look at it with a scope, together with data-ready.',
      'Raise the baud rate: a row of 60 characters takes 5.2 ms at 115200 baud.',
    ],
    evidence: intervalTrace(slow.log),
  }
}

function rateOff(bench: BenchLog, logs: readonly BoardLog[]): Finding | null {
  const wanted = bench.target.rateHz
  const intervals = logs.flatMap(intervalsMs)
  const rate = rateOfIntervals(intervals, logs[0]!.clock)
  const off = rate / wanted - 1
  if (!(Math.abs(off) > RATE_LIMIT)) return null
  const words = off > 0 ? 'faster' : 'slower'
  return {
    code: 'rate-off',
    title: `The rate is ${Math.abs(100 * off).toFixed(1)} % off`,
    seen: `Samples come at ${rate.toFixed(2)} Hz, the target says ${wanted} Hz: ${Math.abs(100 * off).toFixed(1)} % ${words}. The recogniser bears 5 %.`,
    causes: [
      'Another output data rate is set: neighbours in the table differ by a factor of 2.',
      'The divider counts from 0: rate = base / (1 + divider).',
      off < 0
        ? 'Printing takes longer than a sample lasts, so that samples are skipped.'
        : 'The rate of the accelerometer differs from that of the gyroscope.',
      'The oscillator of the part is off; some per cent are usual, more is not.',
    ],
    next: [
      'Measure the frequency of data-ready with a counter or a scope.',
      'If the rate is meant, set the target to the measured rate and train again.',
    ],
    evidence: {
      kind: 'bars',
      unit: 'Hz',
      bars: [
        {
          label: 'rate',
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
    title: 'Samples are missing',
    seen: `${missing} samples (${(100 * share).toFixed(2)} %) are missing: time steps of ${GAP_FACTOR} usual ones and more.`,
    causes: [
      'The buffer of the sensor overflows before it is read.',
      'Printing blocks: the transmit buffer is full.',
      'An interrupt is missed while another one runs.',
    ],
    next: [
      'Read the overrun bit of the sensor’s buffer after each read.',
      'Compare bytes a second with the baud rate: ten bits a byte.',
      'Toggle a pin for each read and look for the gap with a scope: what runs there?',
    ],
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
    lines: [{ label: 'step', values }],
    durationS: values.reduce((sum, dt) => sum + Math.abs(dt), 0) / 1000,
    unit: 'ms',
  }
}
