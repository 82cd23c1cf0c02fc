import type { FittedPlan } from '../../collect/fit-plan'
import type { LabelChange } from '../../collect/labels'
import type { Merge } from '../../collect/merge'
import type { TesterProgress } from '../../collect/missing-takes'
import type { Plan } from '../../collect/plan'
import type { ComparedTake } from '../../collect/takes-compared'
import type { Gesture } from '../../model/library'
import { durationText, plural, shortNumber } from './numbers'

/** What a plan asks for: '5 gestures, 25 takes'. */
export function planText(plan: Plan): string {
  const takes = plan.gestures.reduce((sum, one) => sum + one.takes, 0)
  const each = plan.hand === 'both' ? ' with each hand' : ''
  return `${plural('gesture', plan.gestures.length)}, ${plural('take', takes)}${each}`
}

/** How far testers have come: '3 testers, 12 takes missing'. */
export function progressText(progress: readonly TesterProgress[]): string {
  if (progress.length === 0) return 'nobody has performed it yet'
  const missing = progress.reduce((sum, one) => sum + one.missing, 0)
  const still = missing === 0 ? 'nothing missing' : `${plural('take', missing)} missing`
  return `${plural('tester', progress.length)}, ${still}`
}

/** What a code had to leave out to be read by phones; empty where it holds everything. */
export function fittedText({ links, thinned, leftOut }: FittedPlan): string {
  const parts: string[] = []
  if (leftOut.length > 0) {
    parts.push(
      `The code would be too fine to read with all demonstrations, so those of ${list(leftOut)} are left out; words are shown instead.`,
    )
  }
  if (thinned.length > 0)
    parts.push(`The demonstration of ${list(thinned)} is coarser than the take.`)
  if (links.length > 1) {
    parts.push(
      `The gestures go to ${links.length} codes: each is a short session of its own, in any order. The copied link holds everything in one.`,
    )
  } else if (parts.length > 0) parts.push('The copied link holds everything.')
  return parts.join(' ')
}

/** What is wrong with an address as it stands, for phones that are to open it; empty when it is fine. */
export function addressTrouble({ protocol, hostname }: { protocol: string; hostname: string }) {
  if (/^(localhost|127\.|\[::1\])/.test(hostname)) {
    return 'This address is that of your own computer: other phones cannot open it. Start with npm run phone, or open the app from its host.'
  }
  return protocol === 'https:'
    ? ''
    : 'This address is not secure (https), so phones will give it no motion readings.'
}

/** What a merge found, one sentence. */
export function mergeText(merge: Merge): string {
  const fresh = merge.added.length
  const known = merge.knownCount
  const { relabelled, conflicts, leaving } = merge
  if (fresh === 0 && relabelled.length + conflicts.length + leaving.length > 0)
    return 'No recording is new, but some of those here would change or go.'
  if (fresh === 0 && known > 0)
    return `Everything in it is here already: ${plural('recording', known)}.`
  if (fresh === 0) return 'There is nothing new in it.'
  const also = known === 0 ? '' : `; ${plural('recording', known)} here already`
  return `${plural('recording', fresh)} are new${also}.`.replace(
    /^1 recording are/,
    '1 recording is',
  )
}

/** What stays out of a merge; empty when nothing does. */
export function keptOutText({ keptOut: { withdrawn, dropped } }: Merge): string {
  const parts: string[] = []
  if (withdrawn > 0) parts.push(`${plural('recording', withdrawn)} of testers who withdrew`)
  if (dropped > 0) parts.push(`${plural('take', dropped)} dropped here before`)
  return parts.length === 0 ? '' : `Stays out: ${parts.join(', and ')}.`
}

const FIELD_WORDS = {
  gestureId: 'Gesture',
  testerCode: 'Tester',
  hand: 'Hand',
  trim: 'Trim',
  note: 'Note',
} as const

export function fieldText({ field }: Pick<LabelChange, 'field'>): string {
  return FIELD_WORDS[field]
}

/** The value of a label as people say it. */
export function valueText(change: LabelChange, gestures: readonly Gesture[]): string {
  switch (change.field) {
    case 'gestureId': {
      const found = gestures.find(({ id }) => id === change.value)
      return found?.name ?? (change.value === null ? 'background' : 'a gesture not here')
    }
    case 'trim': {
      if (change.value === null) return 'whole take'
      const { startMs, endMs } = change.value
      return `${durationText(startMs)} to ${durationText(endMs)}`
    }
    case 'hand':
      return change.value === 'unknown' ? 'not noted' : change.value
    default:
      return change.value === '' ? 'nothing' : change.value
  }
}

/** Why a take is worth a look. */
export function farText(take: ComparedTake, gestures: readonly Gesture[]): string {
  const times = take.ratio === null ? '' : `${shortNumber(take.ratio)} times the usual distance`
  const nearer = gestures.find(({ id }) => id === take.nearer)?.name
  return nearer === undefined ? `${times}.` : `${times}, and nearer to ${nearer}.`
}

function list(names: readonly string[]): string {
  if (names.length < 2) return names.join('')
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}
