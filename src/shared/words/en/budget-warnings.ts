const kb = (bytes: number) => `${(bytes / 1024).toFixed(1)} KiB`

/** What a part has too little of, and what would help. */
export const BUDGET_WARNINGS = {
  flash: (needs: number, has: number) =>
    `${kb(needs)} of ${kb(has)} flash: no room for the rest of the firmware.`,
  ram: (needs: number, has: number) =>
    `${kb(needs)} of ${kb(has)} RAM: no room for the rest of the firmware.`,
  time: (ms: number, mostMs: number) =>
    `A decision takes up to ${Math.round(ms)} ms: a delay that is felt above ${mostMs} ms.`,
  duty: (share: number) =>
    `The processor is busy ${Math.round(share * 100)} % of the time: samples may be lost.`,
  templates: (fewer: number, now: number) => `${fewer} templates a gesture, not ${now}`,
  points: (fewer: number, now: number) => `${fewer} points a movement, not ${now}`,
  threeAxes: 'three axes compared, not all',
  halfRate: 'half the output data rate',
  shorterMovements: 'movements at most three quarters as long',
}
