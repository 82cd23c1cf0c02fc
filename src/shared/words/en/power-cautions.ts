import type { CellPreset } from '../../power/cells'

/** What to mind with cells, by their kind. */
export const POWER_CAUTIONS = {
  ofAll: [
    'A short circuit of cells heats wires and cells within seconds: a fuse or a current limit belongs next to them, and insulation between them and the board.',
    'Heat: feel LED, resistor and driver after ten minutes at full light; what cannot be touched is too hot for a hand-held prop.',
    'The maker’s data sheet and local rules go before every figure here.',
  ],
  ofKind: {
    alkaline: [
      'Alkaline cells leak when they are left in empty, mixed old with new, or charged: change all at once and take them out for storage.',
    ],
    button: [
      'Button cells kill children who swallow them. The compartment must need a tool, or two independent movements at the same time, and its screws stay captive (16 CFR 1263, ANSI/UL 4200A; local rules may differ).',
      'If one was swallowed, go to an emergency department at once (from memory; follow local medical advice).',
    ],
    lithium: [
      'Lithium cells burn when they are shorted, crushed, overcharged or charged in the cold: take protected cells, a charger made for them, and a case that cannot be crushed in a hand.',
      'Never charge them in the hand or unattended.',
    ],
    nimh: [
      'Nickel-metal hydride cells give very large currents into a short circuit; polarity in a series reverses when one is empty before the others.',
    ],
  } satisfies Record<CellPreset['kind'], string[]>,
}
