import type { PowerSetup } from '../model/light'
import { POWER_PRESETS } from '../words/en/power-presets'
import { MEMORY, readIn, type Source } from './sources'

export interface CellPreset {
  key: string
  name: string
  kind: 'alkaline' | 'button' | 'lithium' | 'nimh'
  electrical: Pick<
    PowerSetup,
    'capacityMah' | 'freshV' | 'nominalV' | 'endV' | 'cellOhm' | 'selfDischargePercent' | 'maxMa'
  >
  /** Capacity over continuous drain: [mA, mAh], rising drain. One point when no more is known. */
  curve: readonly (readonly [number, number])[]
  capacity: Source
  /** Voltages, resistance, self-discharge. */
  others: Source
}

export const CELL_PRESETS: readonly CellPreset[] = [
  {
    key: 'aa-alkaline',
    name: POWER_PRESETS.aaAlkaline,
    kind: 'alkaline',
    electrical: electrical([2400, 3000, 3000], [1.6, 1.5, 0.9], 0.2, 3, 1000),
    curve: [
      [25, 3000],
      [100, 2650],
      [500, 1625],
      [1000, 1125],
    ],
    capacity: readIn(POWER_PRESETS.aaCurves),
    others: MEMORY,
  },
  {
    key: 'aaa-alkaline',
    name: POWER_PRESETS.aaaAlkaline,
    kind: 'alkaline',
    electrical: electrical([960, 1200, 1200], [1.6, 1.5, 0.9], 0.3, 3, 500),
    curve: [
      [25, 1200],
      [100, 1000],
      [500, 600],
    ],
    capacity: MEMORY,
    others: MEMORY,
  },
  {
    key: 'cr2032',
    name: POWER_PRESETS.cr2032,
    kind: 'button',
    electrical: electrical([180, 225, 240], [3.2, 3.0, 2.0], 25, 1, 3),
    curve: [[0.2, 225]],
    capacity: readIn(POWER_PRESETS.cr2032Capacity),
    others: readIn(POWER_PRESETS.cr2032Others),
  },
  {
    key: 'lr44',
    name: POWER_PRESETS.lr44,
    kind: 'button',
    electrical: electrical([110, 130, 150], [1.6, 1.5, 0.9], 8, 3, 5),
    curve: [[0.2, 130]],
    capacity: MEMORY,
    others: MEMORY,
  },
  {
    key: 'li-po',
    name: POWER_PRESETS.liPo,
    kind: 'lithium',
    electrical: electrical([120, 150, 150], [4.2, 3.7, 3.0], 0.2, 25, 150),
    curve: [[30, 150]],
    capacity: MEMORY,
    others: MEMORY,
  },
  {
    key: 'aa-nimh',
    name: POWER_PRESETS.aaNimh,
    kind: 'nimh',
    electrical: electrical([1600, 2000, 2000], [1.4, 1.2, 1.0], 0.05, 30, 2000),
    curve: [[200, 2000]],
    capacity: MEMORY,
    others: MEMORY,
  },
]

function electrical(
  [min, typ, max]: [number, number, number],
  [freshV, nominalV, endV]: [number, number, number],
  cellOhm: number,
  selfDischargePercent: number,
  maxMa: number,
): CellPreset['electrical'] {
  const capacityMah = { min, typ, max }
  return { capacityMah, freshV, nominalV, endV, cellOhm, selfDischargePercent, maxMa }
}

/** @throws RangeError for a key that is not in CELL_PRESETS. */
export function cellPreset(key: string): CellPreset {
  const found = CELL_PRESETS.find((preset) => preset.key === key)
  if (found === undefined) throw new RangeError(`there is no cell preset ${key}`)
  return found
}

/**
 * What is left of the capacity at a drain, as a share of that at the preset's smallest drain: a
 * straight line between the points of its curve over the logarithm of the drain.
 */
export function capacityShare(key: string, drainMa: number): number {
  const curve = CELL_PRESETS.find((preset) => preset.key === key)?.curve ?? []
  const first = curve[0]
  const last = curve.at(-1)
  if (first === undefined || last === undefined || drainMa <= first[0]) return 1
  if (drainMa >= last[0]) return last[1] / first[1]
  const above = curve.findIndex(([ma]) => ma >= drainMa)
  const [ma1, mah1] = curve[above - 1]!
  const [ma2, mah2] = curve[above]!
  const share = Math.log(drainMa / ma1) / Math.log(ma2 / ma1)
  return (mah1 + (mah2 - mah1) * share) / first[1]
}
