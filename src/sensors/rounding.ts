/** Steps looked for, coarse to fine. W3C allows browsers 0.1 m/s² and 0.1 deg/s, nothing finer. */
const STEPS = [1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01]

/**
 * Different values needed for an answer. If readings were ten times finer than a step, all of
 * eight would lie on it by chance once in 1e8.
 */
const NEEDED = 8
const REMEMBERED = 64
/** Share of a step that a value may lie beside it: room for rounding in single precision. */
const TOLERANCE = 1e-3

/** The coarsest step that every value is a multiple of; 0 when there is none. */
export function commonStep(values: Iterable<number>): number {
  const all = [...values]
  return STEPS.find((step) => all.every((value) => isMultiple(value, step))) ?? 0
}

function isMultiple(value: number, step: number): boolean {
  const steps = value / step
  return Math.abs(steps - Math.round(steps)) < TOLERANCE
}

/** Finds the step that readings are rounded to, from the different values seen lately. */
export class RoundingMeter {
  readonly #seen = new Set<number>()

  add(value: number): void {
    this.#seen.add(value)
    if (this.#seen.size <= REMEMBERED) return
    const [oldest] = this.#seen
    this.#seen.delete(oldest!)
  }

  /** The step in the unit of the values; 0 when they are not rounded, or too few to tell. */
  step(): number {
    return this.#seen.size < NEEDED ? 0 : commonStep(this.#seen)
  }
}
