import {
  BUSY_MOVEMENTS_PER_HOUR,
  type Budget,
  type BudgetFigure,
  budgetOf,
} from '../../budget/budget'
import { MEASURED_COSTS } from '../../budget/measured-costs'
import type { Part } from '../../budget/parts'
import type { Saving } from '../../budget/warnings'
import type { RecogniserModel } from '../../model/recogniser-model'
import { byteText, percent, shortNumber, UNIT_SPACE } from './numbers'

const UNITS = { cycles: 'cycles', instructions: 'instructions' }

/** One line of the budget. */
export interface BudgetRow {
  label: string
  value: string
  known: BudgetFigure['provenance']
  /** Share of what the part has; null where nothing limits it. */
  share: number | null
  note: string
}

/** Below a hundredth of a percent the digits say nothing. */
const LEAST_SHARE = 1e-4

export function budgetRows(model: RecogniserModel, part: Part): BudgetRow[] {
  const budget = budgetOf(model, part)
  return [...memoryRows(budget, part), ...timeRows(budget, part)]
}

function memoryRows(budget: Budget, part: Part): BudgetRow[] {
  const { flash, tables, code, ram, buffers, state, stack } = budget
  return [
    {
      label: 'Flash',
      value: `${byteText(flash.value)} of ${byteText(part.flashBytes)}`,
      known: flash.provenance,
      share: flash.value / part.flashBytes,
      note: `code ${byteText(code.value)}, tables ${byteText(tables.value)} (counted)`,
    },
    {
      label: 'RAM',
      value: `${byteText(ram.value)} of ${byteText(part.ramBytes)}`,
      known: ram.provenance,
      share: ram.value / part.ramBytes,
      note: `buffers ${byteText(buffers.value)} (counted), state ${byteText(state.value)}, stack ${byteText(stack.value)}`,
    },
  ]
}

function timeRows(budget: Budget, part: Part): BudgetRow[] {
  const { decisionMs, work, idleDuty, busyDuty, chargeMahADay } = budget
  const share = (part_: number) => percent(part_ / work.total)
  const kernel = work.kernel > 0 ? `, kernels ${share(work.kernel)}` : ''
  const { unit, fitError } = MEASURED_COSTS[part.core]
  return [
    {
      label: 'Longest decision',
      value: msText(decisionMs.value),
      known: decisionMs.provenance,
      share: null,
      note: `normalising ${share(work.normalise)}, warping ${share(work.warp)}${kernel}; ${UNITS[unit]} of operations measured within ${percent(fitError)}, ${part.cyclesPerInstruction} cycles each assumed`,
    },
    {
      label: 'Processor busy',
      value: smallShare(busyDuty.value),
      known: busyDuty.provenance,
      share: busyDuty.value,
      note: `with ${BUSY_MOVEMENTS_PER_HOUR} movements an hour; ${smallShare(idleDuty.value)} while nothing moves`,
    },
    {
      label: 'Charge a day',
      value: `${shortNumber(chargeMahADay.value)}${UNIT_SPACE}mAh`,
      known: chargeMahADay.provenance,
      share: null,
      note: `processor at ${part.activeMa} mA busy and ${part.waitingMa} mA waiting (from memory); sensor, light and regulator come on top`,
    },
  ]
}

function smallShare(share: number): string {
  const shown = Math.max(share, LEAST_SHARE) * 100
  return `${share < LEAST_SHARE ? 'under ' : ''}${shortNumber(shown)}${UNIT_SPACE}%`
}

function msText(ms: number): string {
  return `${shortNumber(ms)}${UNIT_SPACE}ms`
}

/** A saving as a line: what to change, and what the budget is then. */
export function savingLine({ message, flashBytes, ramBytes, decisionMs }: Saving): string {
  return `${message}: ${byteText(flashBytes)} flash, ${byteText(ramBytes)} RAM, ${msText(decisionMs)}`
}
