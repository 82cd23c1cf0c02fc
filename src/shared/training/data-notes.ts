import { poissonPerHour } from '../statistics/poisson'
import { groupDigits, plural, shortNumber, UNIT_SPACE } from '../words/en/numbers'
import type { Prepared, PreparedTake } from './prepare'

/** Rates that differ by more than this factor are told; phones of one kind differ by less. */
const RATE_FACTOR = 1.25
/** Below this a background can tell no rate that anyone would want to know. */
const SHORT_BACKGROUND_MS = 60_000
const MS_PER_HOUR = 3_600_000

/** Sentences on what the recordings cannot tell, whatever is learned from them; most important first. */
export function notesOnData(prepared: Prepared): string[] {
  return [
    ...aloneNote(prepared),
    ...copyNotes(prepared),
    ...gyroNote(prepared.takes),
    ...rateNote(prepared.takes),
    ...backgroundNote(prepared),
  ]
}

function aloneNote({ gestures, takes }: Prepared): string[] {
  const performed = gestures.filter((_, index) => takes.some((take) => take.gesture === index))
  if (performed.length !== 1) return []
  const [name] = performed.map((gesture) => gesture.name)
  return [
    `${name} is the only gesture with takes: with nothing to confuse it with, only its rejects can be counted. Record a second gesture.`,
  ]
}

/** Takes with the same samples: they count twice, and held out they are known already. */
function copyNotes({ gestures, takes }: Prepared): string[] {
  const bySamples = new Map<string, PreparedTake[]>()
  for (const take of takes) {
    const key = `${take.from} ${take.to} ${take.counts.join()}`
    bySamples.set(key, [...(bySamples.get(key) ?? []), take])
  }
  const copies = [...bySamples.values()].filter((group) => group.length > 1)
  const across = copies.find((group) => new Set(group.map((take) => take.gesture)).size > 1)
  const notes: string[] = []
  if (across !== undefined) {
    const names = [...new Set(across.map((take) => gestures[take.gesture]?.name ?? ''))]
    notes.push(
      `${names.join(' and ')} share takes with the very same samples, so nothing can tell them apart: delete them where they are wrong.`,
    )
  }
  const extra = copies.reduce((sum, group) => sum + group.length - 1, 0)
  if (extra > 0) {
    notes.push(
      `${plural('take', extra)} of ${takes.length} ${extra === 1 ? 'is a copy' : 'are copies'} of another take: held out, they are known already, and every figure looks better than it is. Delete the copies.`,
    )
  }
  return notes
}

function gyroNote(takes: readonly PreparedTake[]): string[] {
  const without = takes.filter(({ take }) => !take.device.hasGyro).length
  if (without === 0) return []
  if (without === takes.length) {
    return [
      'No take has gyroscope readings: rotation counts as nought, and movements that differ in turning alone look the same. A model for a board with a gyroscope needs takes with one.',
    ]
  }
  return [
    `${without} of ${takes.length} takes have no gyroscope readings: their rotation counts as nought, which looks like another movement. Leave them out, or record them again with a sensor that has one.`,
  ]
}

function rateNote(takes: readonly PreparedTake[]): string[] {
  const rates = takes.map(({ take }) => take.device.rateHz).filter((rateHz) => rateHz > 0)
  const [low, high] = [Math.min(...rates), Math.max(...rates)]
  if (rates.length === 0 || high <= RATE_FACTOR * low) return []
  const slow = rates.filter((rateHz) => rateHz * RATE_FACTOR < high).length
  return [
    `Takes come at ${shortNumber(low)} to ${shortNumber(high)}${UNIT_SPACE}Hz: what is faster than ${shortNumber(low / 2)}${UNIT_SPACE}Hz is in ${takes.length - slow} of ${takes.length} takes only, and may tell devices apart instead of gestures.`,
  ]
}

function backgroundNote({ backgrounds }: Prepared): string[] {
  const ms = backgrounds.reduce((sum, { background }) => sum + background.durationMs, 0)
  if (ms <= 0 || ms >= SHORT_BACKGROUND_MS) return []
  const { high } = poissonPerHour(0, ms / MS_PER_HOUR)
  return [
    `The background lasts ${shortNumber(ms / 1000)}${UNIT_SPACE}s: even without an activation there may be up to ${groupDigits(high)} an hour (95${UNIT_SPACE}%, exact Poisson). Record at least 2${UNIT_SPACE}minutes of walking and talking.`,
  ]
}
