import type { Evaluation } from '../model/evaluation'
import { NEXT_STEP } from '../words/en/next-step'
import { confusedPairSentence, mostConfusedPair } from './confused-pair'
import type { LibraryCounts } from './library-counts'

/** Takes of a gesture from which the template matcher works (design: 3 to 5). */
export const FIRST_TAKES = 5
/** Background that can show one false activation in a few minutes at all. */
export const FIRST_BACKGROUND_MS = 120_000

/** Recordings on this phone only that are worth a backup once nothing else is missing. */
export const BACKUP_SOON = 20
/** So many that nothing is worth more. */
export const BACKUP_NOW = 100

/** The one thing worth doing next in a library; the screen gives each its button. */
export type NextStep = { text: string } & (
  | { kind: 'add-gesture' | 'background' | 'prove' | 'try' | 'backup' }
  | { kind: 'record'; gestureId: string; newTester: boolean }
  | { kind: 'look-at-pair'; gestureIds: [string, string] }
)

/**
 * @param evaluation the last one when it is still fresh, else null
 * @param unsaved recordings that no file outside this phone holds
 */
export function nextStep(
  counts: LibraryCounts,
  evaluation: Evaluation | null,
  unsaved = 0,
): NextStep {
  return (
    backupStep(unsaved, BACKUP_NOW) ??
    recordingStep(counts) ??
    backupStep(unsaved, BACKUP_SOON) ??
    measuringStep(evaluation)
  )
}

function backupStep(unsaved: number, enough: number): NextStep | null {
  if (unsaved < enough) return null
  const text = NEXT_STEP.backup(unsaved)
  return { kind: 'backup', text }
}

function recordingStep(counts: LibraryCounts): NextStep | null {
  const [first] = counts.gestures
  if (first === undefined) {
    return {
      kind: 'add-gesture',
      text: NEXT_STEP.noGestures,
    }
  }
  const thin = counts.gestures.find((one) => one.takes.length < FIRST_TAKES)
  if (thin !== undefined) return takesStep(thin.gesture.id, thin.gesture.name, thin.takes.length)
  if (counts.gestures.length === 1) {
    const text = NEXT_STEP.alone(first.gesture.name)
    return { kind: 'add-gesture', text }
  }
  if (counts.backgroundMs < FIRST_BACKGROUND_MS) {
    const text = NEXT_STEP.background
    return { kind: 'background', text }
  }
  if (counts.testers.length < 2) {
    const text = NEXT_STEP.oneTester(counts.testers[0])
    const fewest = counts.gestures.reduce((a, b) => (b.takes.length < a.takes.length ? b : a))
    return { kind: 'record', text, gestureId: fewest.gesture.id, newTester: true }
  }
  return null
}

function takesStep(gestureId: string, name: string, takes: number): NextStep {
  const text =
    takes === 0
      ? NEXT_STEP.noTakes(name, FIRST_TAKES)
      : NEXT_STEP.fewTakes({ gesture: name, takes, enough: FIRST_TAKES })
  return { kind: 'record', text, gestureId, newTester: false }
}

function measuringStep(evaluation: Evaluation | null): NextStep {
  if (evaluation === null) {
    return {
      kind: 'prove',
      text: NEXT_STEP.measure,
    }
  }
  const pair = mostConfusedPair(evaluation)
  const first = pair === null ? undefined : evaluation.gestures[pair.first]
  const second = pair === null ? undefined : evaluation.gestures[pair.second]
  if (pair !== null && first !== undefined && second !== undefined) {
    const text = confusedPairSentence(evaluation, pair)
    return { kind: 'look-at-pair', text, gestureIds: [first.id, second.id] }
  }
  const text = NEXT_STEP.tryIt(evaluation.accuracy)
  return { kind: 'try', text }
}
