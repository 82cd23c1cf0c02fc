/** Preferred values of a decade, IEC 60063. */
const SERIES = {
  E12: [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82],
  E24: [
    10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
  ],
} as const

export type ResistorSeries = keyof typeof SERIES

/** Smallest standard value that is not below `ohm` (> 0): less current and never more. */
export function nextStandard(ohm: number, series: ResistorSeries): number {
  const decade = 10 ** (Math.floor(Math.log10(ohm)) - 1)
  // Floating point makes 150 of 149.99999999999997: such a value is standard already.
  const found = [...SERIES[series], 100].find((value) => value * decade >= ohm * (1 - 1e-9)) ?? 100
  return Number((found * decade).toPrecision(2))
}

/** R = (Vs - Vf) / I, in ohm; driverOhm is in series with it. 0 when the driver alone is enough. */
export function seriesResistor(
  supplyV: number,
  forwardV: number,
  currentMa: number,
  driverOhm = 0,
): number {
  return Math.max(0, ((supplyV - forwardV) / currentMa) * 1000 - driverOhm)
}

/** I = (Vs - Vf) / R, in mA; 0 when the supply does not reach the forward voltage. */
export function ledCurrentMa(supplyV: number, forwardV: number, totalOhm: number): number {
  return Math.max(0, ((supplyV - forwardV) / totalOhm) * 1000)
}

/** P = (Vs - Vf) I, in mW. */
export function resistorMw(supplyV: number, forwardV: number, currentMa: number): number {
  return Math.max(0, (supplyV - forwardV) * currentMa)
}
