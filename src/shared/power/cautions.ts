import type { PowerSetup } from '../model/light'
import { POWER_CAUTIONS } from '../words/en/power-cautions'
import { cellPreset } from './cells'

/** What to mind with these cells; unknown ones get the cautions of all that could be meant. */
export function cautions(power: PowerSetup): string[] {
  if (power.cell === 'custom')
    return [
      ...POWER_CAUTIONS.ofKind.lithium,
      ...POWER_CAUTIONS.ofKind.button,
      ...POWER_CAUTIONS.ofAll,
    ]
  return [...POWER_CAUTIONS.ofKind[cellPreset(power.cell).kind], ...POWER_CAUTIONS.ofAll]
}
