import {
  type GripTolerance,
  type Remedy,
  type RemedyScore,
  toleranceDeg,
} from '../../grip/grip-tolerance'
import { byteText, countOf, percent, plural } from './numbers'

export const REMEDY_NAMES: Record<Remedy, string> = {
  mark: 'A mark, nothing aligned',
  gravity: 'Roll aligned by gravity',
  copies: 'Trained on turned copies',
}

/** Lines that the eye tells apart without colour. */
export const REMEDY_LETTERS: Record<Remedy, string> = { mark: 'm', gravity: 'g', copies: 'c' }

const COSTS: Record<Remedy, string> = {
  mark: 'costs a mark that the thumb can feel',
  gravity: 'costs starting each movement near level, and a rest before it',
  copies: 'costs more templates',
}

/** How far a remedy carries, in one sentence with its figures. */
export function reachWords(score: RemedyScore, limit: number): string {
  const reach = toleranceDeg(score.roll, limit)
  const at0 = score.roll.find(({ angleDeg }) => angleDeg === 0)?.recall
  const base = at0 === undefined ? '' : ` (${percent(at0.value)}, ${countOf(at0)}, as recorded)`
  if (reach >= 180) return `Recall stays at ${percent(limit)} or above all the way round${base}.`
  if (reach <= 0) return `Recall is below ${percent(limit)} as recorded already${base}.`
  return `Recall stays at ${percent(limit)} or above while the grip turns by up to ${Math.floor(reach)}° to either side${base}.`
}

/** What a remedy asks for in return. */
export function costWords(score: RemedyScore, all: readonly RemedyScore[]): string {
  const least = Math.min(...all.map(({ tableBytes }) => tableBytes))
  const more = score.tableBytes - least
  const flash = more > 0.02 * least ? `, ${byteText(more)} more of it than the smallest` : ''
  return `It ${COSTS[score.remedy]}; tables take ${byteText(score.tableBytes)} of flash${flash}.`
}

/** Share of takes without a known roll from which on alignment cannot be counted on. */
const OFTEN_UNKNOWN = 0.1

/** Where gravity cannot tell the roll, and how often that was so. */
export function verticalWords({ verticalDeg, remedies }: GripTolerance): string {
  const unknown = remedies.find(({ rollUnknown }) => rollUnknown !== null)?.rollUnknown
  const often =
    unknown === null || unknown === undefined
      ? ''
      : ` Here that was so in ${countOf(unknown)} takes.`
  const advice =
    unknown != null && unknown.value > OFTEN_UNKNOWN
      ? ' That is too often to rely on gravity: start these movements nearer to level, or choose another remedy.'
      : ''
  return `Gravity says nothing on roll while the long axis is within ${Math.round(verticalDeg)}° of the vertical, or where no rest came before: such movements are left as they are.${often}${advice}`
}

export function basisWords({ holdout, rounds, remedies }: GripTolerance): string {
  const n = remedies[0]?.roll[0]?.recall.n ?? 0
  const held = holdout === 'tester' ? 'a tester held out in each' : 'takes held out in each'
  return `${plural('round', rounds)}, ${held}; ${n} takes at each angle, their raw samples turned. Bars are 95 % intervals.`
}
