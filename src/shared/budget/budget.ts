import { countMemory } from '../firmware/memory'
import type { RecogniserModel } from '../model/recogniser-model'
import { type DecisionWork, decisionWork } from './costs'
import { MEASURED_COSTS } from './measured-costs'
import { decisionOperations } from './operations'
import type { Part } from './parts'

/**
 * How a figure was come by: counted from the model, measured on an emulated core of that kind, or
 * estimated, that is computed from either with cycles and currents that were not measured.
 */
export type Provenance = 'counted' | 'measured' | 'estimated'

export interface BudgetFigure {
  value: number
  provenance: Provenance
}

/** What a model asks of a part. Bytes; times in ms; energies as charge. */
export interface Budget {
  tables: BudgetFigure
  code: BudgetFigure
  /** Code and tables. */
  flash: BudgetFigure
  buffers: BudgetFigure
  state: BudgetFigure
  stack: BudgetFigure
  /** All of them. */
  ram: BudgetFigure
  /** The longest decision: longest movement, no template given up early. */
  decisionMs: BudgetFigure
  /** Parts of it. */
  work: DecisionWork
  /** Share of the processor's time while nothing moves, and with so many movements an hour. */
  idleDuty: BudgetFigure
  busyDuty: BudgetFigure
  /** Charge a day that the recogniser takes, processor waiting included; sensor and light not. */
  chargeMahADay: BudgetFigure
}

/** Movements an hour that the duty is given for: one every six seconds. */
export const BUSY_MOVEMENTS_PER_HOUR = 600

/** Cortex-M parts run the core from flash of the kind measured; the compiler may differ. */
export function budgetOf(model: RecogniserModel, part: Part): Budget {
  const costs = MEASURED_COSTS[part.core]
  const memory = countMemory(model)
  const tables = memory.templateBytes + memory.gestureBytes + memory.kernelBytes
  const buffers = memory.ringBytes + memory.queryBytes + memory.rowBytes
  const work = decisionWork(decisionOperations(model), costs)
  const msOf = (operations: number) =>
    ((operations * part.cyclesPerInstruction) / part.clockHz) * 1e3
  const sampleMs = 1e6 / model.board.rateMillihertz
  const idleDuty = msOf(costs.idle) / sampleMs
  const decisionMs = msOf(work.total)
  const busyDuty = idleDuty + (decisionMs * BUSY_MOVEMENTS_PER_HOUR) / 3_600_000
  const charge = 24 * (busyDuty * part.activeMa + (1 - Math.min(1, busyDuty)) * part.waitingMa)
  const size: Provenance = part.resembles ? 'estimated' : 'measured'
  const figure = (value: number, provenance: Provenance): BudgetFigure => ({ value, provenance })
  return {
    tables: figure(tables, 'counted'),
    code: figure(costs.codeBytes, size),
    flash: figure(tables + costs.codeBytes, size),
    buffers: figure(buffers, 'counted'),
    state: figure(costs.stateBytes, size),
    stack: figure(costs.stackBytes, size),
    ram: figure(buffers + costs.stateBytes + costs.stackBytes, size),
    decisionMs: figure(decisionMs, 'estimated'),
    work,
    idleDuty: figure(idleDuty, 'estimated'),
    busyDuty: figure(busyDuty, 'estimated'),
    chargeMahADay: figure(charge, 'estimated'),
  }
}
