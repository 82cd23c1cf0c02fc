import type { DecisionOperations } from './operations'

/** Processor cores whose costs are measured; others are taken for the one they resemble most. */
export type CoreKind = 'avr' | 'm0' | 'm3'

/**
 * What operations cost on a core, in cycles (AVR) or instructions (Cortex-M): measured on the
 * emulator by `npm run target -- --write`, fitted to models of several shapes.
 */
export interface OperationCosts {
  unit: 'cycles' | 'instructions'
  /** Mean of a sample without movement, and within one. */
  idle: number
  moving: number
  /** Of normalising: beginning, a row, what a row costs more when it is levelled, a value. */
  normalise: number
  row: number
  levelledRow: number
  point: number
  /** Of warping: a template, a row, a cell with six channels, a cell otherwise, a value of it. */
  template: number
  warpRow: number
  cellOfSix: number
  cell: number
  value: number
  /** Of kernel features: one, and one at a point. */
  feature: number
  featurePoint: number
  /** Largest relative error of the fit over the models it was made from. */
  fitError: number
  /** Flash of the recogniser's code, and RAM besides ring, query and row: state and stack. */
  codeBytes: number
  stateBytes: number
  stackBytes: number
}

/** Work of normalising, of warping and of kernel features, in the unit of the costs. */
export interface DecisionWork {
  normalise: number
  warp: number
  kernel: number
  total: number
}

export function decisionWork(operations: DecisionOperations, costs: OperationCosts): DecisionWork {
  const o = operations
  const rows = o.rows * costs.row + o.levelledRows * costs.levelledRow
  const normalise = costs.normalise + rows + o.points * costs.point
  const cells = o.six
    ? o.warpCells * costs.cellOfSix
    : o.warpCells * costs.cell + o.warpValues * costs.value
  const warp = o.templates * costs.template + o.warpRows * costs.warpRow + cells
  const kernel = o.features * costs.feature + o.featurePoints * costs.featurePoint
  return { normalise, warp, kernel, total: normalise + warp + kernel }
}
