import { poissonPerHour } from '../statistics/poisson'
import { TRAINING_NOTES } from '../words/en/training-notes'
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
  return [TRAINING_NOTES.alone(name ?? '')]
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
    notes.push(TRAINING_NOTES.sameSamples(names))
  }
  const extra = copies.reduce((sum, group) => sum + group.length - 1, 0)
  if (extra > 0) {
    notes.push(TRAINING_NOTES.copies(extra, takes.length))
  }
  return notes
}

function gyroNote(takes: readonly PreparedTake[]): string[] {
  const without = takes.filter(({ take }) => !take.device.hasGyro).length
  if (without === 0) return []
  if (without === takes.length) {
    return [TRAINING_NOTES.noGyro]
  }
  return [TRAINING_NOTES.someWithoutGyro(without, takes.length)]
}

function rateNote(takes: readonly PreparedTake[]): string[] {
  const rates = takes.map(({ take }) => take.device.rateHz).filter((rateHz) => rateHz > 0)
  const [low, high] = [Math.min(...rates), Math.max(...rates)]
  if (rates.length === 0 || high <= RATE_FACTOR * low) return []
  const slow = rates.filter((rateHz) => rateHz * RATE_FACTOR < high).length
  return [
    TRAINING_NOTES.mixedRates({
      lowHz: low,
      highHz: high,
      fast: takes.length - slow,
      takes: takes.length,
    }),
  ]
}

function backgroundNote({ backgrounds }: Prepared): string[] {
  const ms = backgrounds.reduce((sum, { background }) => sum + background.durationMs, 0)
  if (ms <= 0 || ms >= SHORT_BACKGROUND_MS) return []
  const { high } = poissonPerHour(0, ms / MS_PER_HOUR)
  return [TRAINING_NOTES.shortBackground({ ms, mostPerHour: high })]
}
