import type { TeachAnswer } from '../../core/core'
import type { Rate } from '../../model/evaluation'
import type { RecogniserModel } from '../../model/recogniser-model'
import type { TeachCost } from '../../teach/teach-cost'
import { pText } from './compare-words'
import {
  countOf,
  groupDigits,
  percent,
  percentRange,
  plural,
  shortNumber,
  UNIT_SPACE,
} from './numbers'
import { overTakesWords, testerSignWords } from './tester-words'

/** What came of the last movement of a session: what was seen, and what to do. */
export interface TeachWords {
  seen: string
  todo: string
}

/**
 * @param takes of a session
 * @param taught name of the gesture that is taught
 */
export function teachWords(
  answer: TeachAnswer,
  model: RecogniserModel,
  takes: number,
  taught: string,
): TeachWords {
  const other = answer.nearest === null ? null : (model.gestures[answer.nearest]?.name ?? '')
  const [spread, distance, threshold] = [
    groupDigits(answer.spread),
    groupDigits(answer.nearestDistance ?? 0),
    groupDigits(answer.threshold),
  ]
  switch (answer.status) {
    case 'more':
      return {
        seen: `${answer.count} of ${takes} taken.`,
        todo: 'Rest a moment, then make the same movement again.',
      }
    case 'done':
      return {
        seen: `${taught} is taught: its movements lie within ${spread} of each other${other === null ? '' : `, the nearest other gesture is ${other} at ${distance}`}. It answers up to ${threshold}.`,
        todo: 'Try it, then see what it costs the others.',
      }
    case 'cut':
      return {
        seen: 'This movement was too short or too long to be compared, and was not taken.',
        todo: 'Rest, make it in one go, and rest again.',
      }
    case 'unlike':
      return {
        seen: `These movements lie up to ${spread} apart, more than any gesture of the model may: nothing was changed.`,
        todo: 'Begin again and make them alike.',
      }
    case 'near':
      return {
        seen: `${other ?? 'Another gesture'} is as near (${distance}) as these movements are to each other (${spread}): nothing was changed.`,
        todo: `Choose a movement that differs more, or teach it in place of ${other ?? 'the other'}.`,
      }
    default:
      return { seen: '', todo: '' }
  }
}

/**
 * What the model answered to the movements before they were taught; '' when most were rejected, or
 * answered with the very gesture whose place is taken.
 */
export function knownAsWords(
  steps: readonly { answer: TeachAnswer; counts: unknown }[],
  { gestures }: RecogniserModel,
  except: string | null,
): string {
  const taken = steps.filter(({ counts }) => counts !== null)
  const events = taken.map(({ answer }) => answer.event)
  const [best] = gestures
    .map(({ id, name }, index) => {
      const hits = events.filter((event) => event.kind === 'gesture' && event.gesture === index)
      return { id, name, hits: hits.length }
    })
    .sort((a, b) => b.hits - a.hits)
  if (best === undefined || best.id === except || best.hits * 2 <= taken.length) return ''
  return `Until now the model answered ${best.hits} of these ${taken.length} with ${best.name}. If that is what they are, teach them in place of ${best.name}; if not, look at what it costs.`
}

/** What a taught gesture costs the others, what it means and what to do. */
export interface TeachCostWords {
  seen: string
  means: string
  todo: string
}

const LEVEL = 0.05

export function teachCostWords(cost: TeachCost): TeachCostWords {
  const { before, after, loss, accepted, rounds } = cost
  if (accepted === 0) {
    return {
      seen: `None of ${plural('round', rounds)} with ${heldOut(cost)} held out let itself be taught with these movements.`,
      means: 'Models from fewer takes find them too near another gesture, or not alike.',
      todo: 'Choose a movement that differs more from the others.',
    }
  }
  return {
    seen: `Of ${plural('held-out take', before.n)} of the other gestures ${before.hits} were right without it and ${after.hits} are with it: ${loss.onlyFirst} lost, ${loss.onlySecond} won (exact McNemar p${UNIT_SPACE}=${UNIT_SPACE}${pText(cost.p)}).`,
    means: meansOf(cost),
    todo: todoOf(cost),
  }
}

function meansOf({ holdout, loss, p, testers, accepted, rounds }: TeachCost): string {
  const most = `at most ${(loss.high * 100).toFixed(1)} points at 95${UNIT_SPACE}% confidence ${overTakesWords(holdout)}`
  const sure = p < LEVEL && loss.value > 0
  const says = sure
    ? `It costs the others more than chance explains, ${most}.`
    : `It costs the others no more than chance explains, ${most}.`
  const refused =
    accepted === rounds
      ? ''
      : `In ${rounds - accepted} of ${plural('round', rounds)} it was refused, and their takes are not counted.`
  return [says, testerSignWords(holdout, testers), refused].filter((text) => text !== '').join(' ')
}

function todoOf({ losers, p, loss, background }: TeachCost): string {
  const [worst] = losers
  const alarms = background !== null && background.activations > 0
  if (p < LEVEL && loss.value > 0 && worst !== undefined) {
    return `Choose a movement less like ${worst.name}, which loses ${worst.before - worst.after} of ${worst.n}.`
  }
  if (alarms) return 'Look at the background: everyday movements are answered with it.'
  if (worst === undefined) return 'Nothing speaks against it.'
  return `Nothing speaks against it; ${worst.name} loses ${worst.before - worst.after} of ${plural('take', worst.n)}.`
}

function heldOut({ holdout }: TeachCost): string {
  return holdout === 'tester' ? 'testers' : 'takes'
}

/** False activations of the taught gesture; '' without background. */
export function teachBackgroundWords({ background }: TeachCost): string {
  if (background === null) return ''
  const { activations, hours, perHour, low, high } = background
  return `Of ${shortNumber(hours * 60)} min of background it answered ${plural('movement', activations)}: ${shortNumber(perHour)} an hour, 95${UNIT_SPACE}% interval ${shortNumber(low)} to ${shortNumber(high)}.`
}

/** What others' takes of the gesture whose place is taken become; '' for one more, and unmeasured. */
export function teachPlaceWords({ holdout, place }: TeachCost): string {
  if (place === null || place.before.n === 0) return ''
  const { name, before, after } = place
  const takes =
    holdout === 'tester'
      ? `Takes of ${name} by testers the model does not know`
      : `Held-out takes of ${name} by testers the model knows`
  return `${takes}: ${shareOf(before)} right with its own templates, ${shareOf(after)} with the taught one; the intervals are ${overTakesWords(holdout)}. It is now yours.`
}

/** '95 % (38/40, 95 % interval 83.5 to 98.6 %)'. */
function shareOf(rate: Rate): string {
  return `${percent(rate.value)} (${countOf(rate)}, 95${UNIT_SPACE}% interval ${percentRange(rate.low, rate.high)})`
}
