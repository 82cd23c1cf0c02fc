import { type CoreKind, decisionWork } from './costs'
import { MEASURED_COSTS } from './measured-costs'
import { bandCells } from './operations'

/** Points of a normalised segment, and half width of the warping window. */
export interface SegmentShape {
  length: number
  band: number
}

/**
 * What a decision should not exceed: 10 ms at 48 MHz on a Cortex-M if an instruction took a cycle,
 * 100 ms at 16 MHz on an AVR, in the unit of the core's costs.
 */
export const DECISION_GOAL: Record<CoreKind, number> = { avr: 1_600_000, m0: 480_000, m3: 480_000 }

/**
 * Shapes to fall back to, dearest first. On recorded wrist actions with the tester held out (UTD-MHAD,
 * nearest template, n = 671) 32/5 recognised 0.857, 24/3 0.844, 20/3 0.833 and 16/3 0.805; on hand
 * strokes (UEA UWaveGestureLibrary, n = 320) 0.906, 0.906, 0.903 and 0.900.
 */
const LADDER: readonly SegmentShape[] = [
  { length: 24, band: 3 },
  { length: 20, band: 3 },
  { length: 16, band: 3 },
]

/**
 * The wanted shape, or the first cheaper one with which a decision keeps to the goal even if no
 * template is given up early; the cheapest when none does.
 * @param rows samples of the longest movement compared
 */
export function affordableShape(
  core: CoreKind,
  wanted: SegmentShape,
  templates: number,
  channels: number,
  rows: number,
): SegmentShape {
  const shapes = [wanted, ...LADDER.filter(({ length }) => length < wanted.length)]
  const fits = ({ length, band }: SegmentShape) => {
    const warpCells = templates * bandCells(length, band)
    const operations = {
      rows,
      levelledRows: 0,
      points: length * channels,
      templates,
      warpRows: templates * length,
      warpCells,
      warpValues: warpCells * channels,
      features: 0,
      featurePoints: 0,
      six: channels === 6,
    }
    return decisionWork(operations, MEASURED_COSTS[core]).total <= DECISION_GOAL[core]
  }
  return shapes.find(fits) ?? shapes[shapes.length - 1] ?? wanted
}
