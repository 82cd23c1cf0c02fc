import type { CoreEvent, CoreReason, CoreRoll } from '../../core/core'
import type { TakeOutcome } from '../../model/evaluation'
import type { RecogniserModel } from '../../model/recogniser-model'
import { samplesToMs } from '../../present/sample-time'
import { durationText, groupDigits } from './numbers'

/** What the recogniser made of one movement, in words. */
export interface Verdict {
  /** Name of the gesture, or 'None of these'. */
  headline: string
  /** What was seen, with figures. */
  reason: string
  /** What may be done about it; empty when nothing is wrong. */
  advice: string
  /** One clause on roll alignment; empty when it needs no words. */
  roll: string
}

const ROLL_WORDS: Record<CoreRoll, string> = {
  off: '',
  aligned: '',
  vertical: 'roll unknown: the long axis was near the vertical',
  'no-rest': 'roll unknown: no rest was seen before the movement',
}

const ADVICE: Record<CoreReason, string> = {
  none: '',
  far: 'If it was meant, record takes like it, or raise the threshold factor on Prop.',
  ambiguous: 'Look at both gestures: make them differ, or record more takes of each.',
  short: 'Make it slower or bigger. If it was meant, record takes like it and train again.',
  long: 'Rest before and after; separate it from the movement before it.',
}

/** Sentences for an event of the core. Lengths are told in the target's time. */
export function verdict(event: CoreEvent, model: RecogniserModel): Verdict {
  return {
    headline: event.kind === 'gesture' ? gestureName(model, event.gesture) : 'None of these',
    reason: reasonText(event, model),
    advice: ADVICE[event.reason],
    roll: ROLL_WORDS[event.roll],
  }
}

function gestureName(model: RecogniserModel, index: number | null): string {
  if (index === null) return 'no gesture'
  return model.gestures[index]?.name ?? `gesture ${index + 1}`
}

function reasonText(event: CoreEvent, model: RecogniserModel): string {
  const lengthMs = samplesToMs(event.end - event.start, model)
  switch (event.reason) {
    case 'short':
      return `too short: ${durationText(lengthMs)}, compared from ${durationText(samplesToMs(model.segmenter.minLength, model))}`
    case 'long':
      return `too long: no rest within ${durationText(samplesToMs(model.segmenter.maxLength, model))}`
    case 'far':
      return `too far: nearest is ${gestureName(model, event.gesture)}, distance ${distanceText(event.distance)} > ${groupDigits(event.threshold)}`
    case 'ambiguous':
      return `ambiguous between ${gestureName(model, event.gesture)} and ${gestureName(model, event.runnerUp)}: ${distanceText(event.distance)} and ${distanceText(event.runnerUpDistance)}, less than ${model.marginPercent} % apart`
    case 'none':
      return `distance ${distanceText(event.distance)} ≤ ${groupDigits(event.threshold)}${runnerUpText(event, model)}`
  }
}

function runnerUpText(event: CoreEvent, model: RecogniserModel): string {
  if (event.runnerUp === null || event.runnerUpDistance === null) return ''
  return `; next is ${gestureName(model, event.runnerUp)} at ${distanceText(event.runnerUpDistance)}`
}

function distanceText(distance: number | null): string {
  return distance === null ? 'not known' : groupDigits(distance)
}

/** What became of a held-out take: how it was cut, and what decided. */
export function outcomeText(outcome: TakeOutcome, gestures: { name: string }[]): string {
  const { cut, event } = outcome
  if (event === null) return 'no movement was cut out'
  const named = (index: number | null) => (index === null ? '' : (gestures[index]?.name ?? ''))
  const pieces = cut === 'split' ? '; cut in pieces, the longest decided' : ''
  switch (event.reason) {
    case 'short':
      return `too short to compare${pieces}`
    case 'long':
      return `no rest before the longest length${pieces}`
    case 'far':
      return `nearest ${named(event.gesture)}: ${distanceText(event.distance)} > ${groupDigits(event.threshold)}${pieces}`
    case 'ambiguous':
      return `between ${named(event.gesture)} ${distanceText(event.distance)} and ${named(event.runnerUp)} ${distanceText(event.runnerUpDistance)}${pieces}`
    case 'none':
      return `${named(event.gesture)}: ${distanceText(event.distance)} ≤ ${groupDigits(event.threshold)}${pieces}`
  }
}
