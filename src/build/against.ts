import { changesBetween } from '../shared/compare/changes'
import { type Comparison, compareEvaluations } from '../shared/compare/compare-evaluations'
import { basisOf } from '../shared/compare/model-basis'
import type { Evaluation } from '../shared/model/evaluation'
import { type FullLibrary, MATCHER_WISHES, type TrainingSettings } from '../shared/model/library'
import { fail, ok, type Result } from '../shared/model/result'
import {
  type CompareWords,
  compareWords,
  flipText,
  gestureWords,
  notComparedWords,
} from '../shared/words/en/compare-words'

/** A library with how its gestures are recognised. */
export interface MeasuredLibrary {
  full: FullLibrary
  evaluation: Evaluation
}

/** As `npm run evaluate -- A --against B` answers. */
export interface AgainstReport {
  changes: string[]
  comparison: Comparison
  words: CompareWords
}

/** What the second has that the first has not, on the takes that both held out. */
export function reportAgainst(
  first: MeasuredLibrary,
  second: MeasuredLibrary,
): Result<AgainstReport> {
  const takeIds = ({ full }: MeasuredLibrary) =>
    new Set(full.recordings.map(({ recording }) => recording.id))
  const compared = compareEvaluations(
    { evaluation: first.evaluation, takeIds: takeIds(first) },
    { evaluation: second.evaluation, takeIds: takeIds(second) },
  )
  if (!compared.ok) return compared
  const changes = changesBetween(basisOf('', first.full), basisOf('', second.full))
  const words = compareWords(compared.value, changes)
  return ok({ changes, comparison: compared.value, words })
}

export function againstText({ comparison, words }: AgainstReport): string {
  const flips = comparison.flips.map(
    (flip) => `  ${flip.takeId} ${flip.testerCode} ${flipText(flip)}`,
  )
  const lines = [
    ...[words.changed, words.means, words.evidence, words.todo],
    ...[gestureWords(comparison), notComparedWords(comparison)],
    ...flips,
  ]
  return lines.filter((line) => line !== '').join('\n')
}

/** Settings by name: what a value may be, as `TrainingSettings` says. */
const SETTINGS: Record<string, readonly unknown[] | { from: number; to: number }> = {
  templatesPerGesture: { from: 1, to: 16 },
  length: { from: 8, to: 128 },
  bandShare: { from: 0, to: 1 },
  thresholdFactor: { from: 0.5, to: 2 },
  rollAlign: [true, false],
  segmentation: ['motion', 'button'],
  matcher: MATCHER_WISHES,
}

/** Training settings from `length=32,rollAlign=false`; only names that there are, in their ranges. */
export function readSettings(text: string): Result<Partial<TrainingSettings>> {
  const settings: Record<string, unknown> = {}
  for (const part of text.split(',').filter((one) => one !== '')) {
    const [name = '', said = ''] = part.split('=')
    const allowed = Object.hasOwn(SETTINGS, name) ? SETTINGS[name] : undefined
    const value = allowed && settingValue(said, allowed)
    if (value === undefined) return fail('usage', notASetting(part, allowed))
    settings[name] = value
  }
  return ok(settings as Partial<TrainingSettings>)
}

type Allowed = (typeof SETTINGS)[string]

function settingValue(said: string, allowed: Allowed): unknown {
  if (!('from' in allowed)) return allowed.find((one) => String(one) === said)
  const value = Number(said)
  return said !== '' && value >= allowed.from && value <= allowed.to ? value : undefined
}

function notASetting(part: string, allowed: Allowed | undefined): string {
  if (allowed === undefined) {
    return `"${part}" is no setting: there are ${Object.keys(SETTINGS).join(', ')}, each as name=value.`
  }
  const values =
    'from' in allowed ? `a number from ${allowed.from} to ${allowed.to}` : allowed.join(' or ')
  return `"${part}" is not what this setting takes: ${values}.`
}

/** The library with other training settings. */
export function withSettings(full: FullLibrary, settings: Partial<TrainingSettings>): FullLibrary {
  const training = { ...full.library.training, ...settings }
  return { ...full, library: { ...full.library, training } }
}
