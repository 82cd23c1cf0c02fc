import { type GripTolerance, type RemedyScore, toleranceDeg } from '../grip/grip-tolerance'

/** The remedy that carries furthest; the cheaper one where they are alike within 15°. */
export function bestRemedy(grip: GripTolerance, limit: number): RemedyScore | null {
  const reach = (score: RemedyScore) => toleranceDeg(score.roll, limit)
  const furthest = Math.max(...grip.remedies.map(reach))
  const alike = grip.remedies.filter((score) => reach(score) >= furthest - 15)
  return [...alike].sort((a, b) => a.tableBytes - b.tableBytes)[0] ?? null
}
