import type { LedSetup, PowerSetup, Spread } from '../../model/light'
import { EMITTER_NAMES, emitterMa, headroomProblem, STAGES, type Stage } from '../../power/headroom'
import { drainOf, type LightUse, peakMa, runtime, shelfYears } from '../../power/runtime'
import { EMITTER_WORDS } from './emitter-words'
import { shortNumber } from './numbers'

/** The cells over their life. */
const STAGE_WORDS: Record<Stage, string> = {
  fresh: 'fresh cells',
  nominal: 'nominal cells',
  empty: 'empty cells',
}

/** One line of the table of the cells: least, typical, most. */
export interface PowerRow {
  label: string
  unit: string
  values: [string, string, string]
  /** The sum or the result, set off from what it is made of. */
  strong: boolean
}

function row(label: string, unit: string, { min, typ, max }: Spread, strong = false): PowerRow {
  return { label, unit, values: [shortNumber(min), shortNumber(typ), shortNumber(max)], strong }
}

/** Everything that draws on the cells, and how long they last. */
export function powerTable(power: PowerSetup, led: LedSetup, use: LightUse): PowerRow[] {
  const drain = drainOf(power, led, use)
  const { capacityMah, hours } = runtime(power, drain.total)
  return [
    row('LED', 'mA', drain.led),
    row('Processor', 'mA', drain.processor),
    row('Sensor', 'mA', drain.sensor),
    row('Standby', 'mA', drain.standby),
    row('Self-discharge', 'mA', drain.selfDischarge),
    row('Together, on average', 'mA', drain.total, true),
    row('Capacity at that drain', 'mAh', capacityMah),
    row('Runtime', 'h', hours, true),
    row('Switched off', 'years', shelfYears(power)),
  ]
}

/** Current of each colour at full duty over the life of the cells, mA, least to most. */
export function currentTable(power: PowerSetup, led: LedSetup): PowerRow[] {
  return EMITTER_NAMES.flatMap((name, i) =>
    STAGES.map((stage) =>
      row(
        `${EMITTER_WORDS[name]}, ${STAGE_WORDS[stage]}`,
        'mA',
        emitterMa(power, led, led.emitters[i]!, stage),
      ),
    ),
  )
}

/** What the cells cannot give: a sentence each, with numbers. */
export function headroomSentences(power: PowerSetup, led: LedSetup): string[] {
  const short = EMITTER_NAMES.flatMap((name, i) => {
    const problem = headroomProblem(power, led, led.emitters[i]!)
    if (problem === null) return []
    const { needsV, hasV, goesOutAtV } = problem
    const colour = EMITTER_WORDS[name]
    const outAt =
      power.supply === 'direct'
        ? `; typically it is dark below ${goesOutAtV.toFixed(2)} V a cell`
        : ''
    return [
      `${colour[0]!.toUpperCase()}${colour.slice(1)} needs up to ${needsV.toFixed(2)} V, empty cells leave ${hasV.toFixed(2)} V${outAt}.`,
    ]
  })
  const peak = peakMa(power, led)
  if (peak <= power.maxMa) return short
  return [
    ...short,
    `At full light ${shortNumber(peak)} mA flow, the cell is made for ${shortNumber(power.maxMa)} mA: it sags by ${shortNumber((peak * power.cellOhm) / 1000)} V and gives less than its capacity.`,
  ]
}
