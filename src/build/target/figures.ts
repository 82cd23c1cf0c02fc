import type { BoardBuild } from './build'
import type { RecogniserSize } from './elf'
import type { Costs } from './self-test-output'

export interface Figure {
  figure: string
  value: number
  unit: string
}

/**
 * Figures of a board. Of decisions the dearest over all vectors counts, as it bounds the latency; of
 * other samples the mean, as they make the energy.
 */
export function boardFigures(board: BoardBuild, size: RecogniserSize, costs: Costs): Figure[] {
  const { name, workUnit, workPerTick } = board
  const work = (ticks: number) => Math.round(ticks * workPerTick)
  const { decisions, idle, moving, stackBytes } = costs
  // Of the least of the boards without a name before it: what is said of teaching.
  const teach = name === 'm0' ? '' : `${name}_`
  const mean = decisions.reduce((sum, ticks) => sum + ticks, 0) / decisions.length
  return [
    bytes(`${name}_flash_bytes`, size.codeBytes + size.tableBytes),
    bytes(`${name}_code_bytes`, size.codeBytes),
    bytes(`${name}_table_bytes`, size.tableBytes),
    bytes(`${name}_ram_bytes`, size.staticBytes + stackBytes),
    bytes(`${name}_static_bytes`, size.staticBytes),
    bytes(`${name}_stack_bytes`, stackBytes),
    bytes(`${teach}teach_code_bytes`, size.teachCodeBytes),
    bytes(`${teach}teach_state_bytes`, size.teachStateBytes),
    { figure: `${name}_idle_${workUnit}`, value: work(idle.ticks / idle.samples), unit: workUnit },
    {
      figure: `${name}_moving_${workUnit}`,
      value: work(moving.ticks / moving.samples),
      unit: workUnit,
    },
    {
      figure: `${name}_decision_${workUnit}`,
      value: work(Math.max(...decisions)),
      unit: workUnit,
    },
    { figure: `${name}_decision_mean_${workUnit}`, value: work(mean), unit: workUnit },
  ]
}

function bytes(figure: string, value: number): Figure {
  return { figure, value, unit: 'bytes' }
}
