import type { OperationCosts } from '../../shared/budget/costs'
import { type DecisionOperations, decisionOperations } from '../../shared/budget/operations'
import type { FirmwareInput } from '../../shared/firmware/bundle'
import { countMemory } from '../../shared/firmware/memory'
import { SHAPES, shapedFirmware } from './bench-models'
import type { BoardBuild } from './build'
import { bundleOf } from './demo-bundle'
import type { RecogniserSize } from './elf'
import { fitCosts, largestError } from './least-squares'
import type { Costs } from './self-test-output'
import { Workshop } from './workshop'

/** What was measured of one model on one segment. */
interface Measured {
  operations: DecisionOperations
  kind: 'normalise' | 'templates' | 'kernel'
  ticks: number
}

/** Costs of a board's operations, fitted to models of several shapes. */
export function measureCosts(
  board: BoardBuild,
  input: FirmwareInput,
  size: RecogniserSize,
  costs: Costs,
): OperationCosts {
  const measured = SHAPES.flatMap((shape) => {
    const firmware = shapedFirmware(input, shape)
    const shop = new Workshop(bundleOf(firmware))
    try {
      return measuredOf(board.bench(shop), (rows) =>
        decisionOperations(firmware.trained.model, rows),
      )
    } finally {
      shop.dispose()
    }
  })
  const costsOf = (kind: Measured['kind'], terms: (o: DecisionOperations) => number[]) => {
    const some = measured.filter((one) => one.kind === kind)
    const rows = some.map(({ operations }) => terms(operations))
    const values = some.map(({ ticks }) => ticks * board.workPerTick)
    const x = fitCosts(rows, values)
    return { x: x.map(round), error: largestError(rows, values, x) }
  }
  const normalise = costsOf('normalise', (o) => [1, o.rows, o.levelledRows, o.points])
  const warp = costsOf('templates', (o) => [
    o.templates,
    o.warpRows,
    o.six ? o.warpCells : 0,
    o.six ? 0 : o.warpCells,
    o.six ? 0 : o.warpValues,
  ])
  const kernel = costsOf('kernel', (o) => [o.features, o.featurePoints])
  const memory = countMemory(input.trained.model)
  const mean = (kind: 'idle' | 'moving') =>
    Math.round((costs[kind].ticks / costs[kind].samples) * board.workPerTick)
  const [base = 0, row = 0, levelledRow = 0, point = 0] = normalise.x
  const [template = 0, warpRow = 0, cellOfSix = 0, cell = 0, value = 0] = warp.x
  const [feature = 0, featurePoint = 0] = kernel.x
  return {
    unit: board.workUnit,
    idle: mean('idle'),
    moving: mean('moving'),
    normalise: base,
    row,
    levelledRow,
    point,
    template,
    warpRow,
    cellOfSix,
    cell,
    value,
    feature,
    featurePoint,
    fitError: Number(Math.max(normalise.error, warp.error, kernel.error).toFixed(3)),
    codeBytes: size.codeBytes,
    stateBytes: size.staticBytes - (memory.ringBytes + memory.queryBytes + memory.rowBytes),
    stackBytes: costs.stackBytes,
  }
}

function measuredOf(printed: string, operations: (rows: number) => DecisionOperations): Measured[] {
  let rows = 0
  return [...printed.matchAll(/^# (normalise|templates|kernel) (\d+) (\d+)/gm)].map((line) => {
    const [, kind, first, ticks] = line
    if (kind === 'normalise') rows = Number(first)
    return { kind: kind as Measured['kind'], operations: operations(rows), ticks: Number(ticks) }
  })
}

function round(value: number): number {
  return Number(value.toPrecision(4))
}
