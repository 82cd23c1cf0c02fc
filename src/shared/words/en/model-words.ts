import type { KeptModel } from '../../compare/kept-model'
import { ageText } from './age-words'
import { KIND_WORDS } from './matcher-words'
import { byteText, percent, plural } from './numbers'

/** A kept model in a few words, to be chosen from a list: its age, takes and share right. */
export function modelTitle(model: KeptModel, keptAt: string, nowMs: number): string {
  const { tester, take } = model.evaluations
  const measured = tester ?? take
  const share =
    measured === undefined ? 'not measured' : `${percent(measured.accuracy.value)} right`
  return `${ageText(keptAt, nowMs)}: ${plural('take', model.takes.length)}, ${share}`
}

/** What it was made of, and what it costs. */
export function modelDetail(model: KeptModel): string {
  const testers = new Set(model.takes.map(({ testerCode }) => testerCode)).size
  const { length, thresholdFactor } = model.training
  const factor = thresholdFactor === 1 ? '' : `, threshold factor ${thresholdFactor}`
  return `${plural('gesture', model.gestures.length)}, ${plural('tester', testers)}; ${KIND_WORDS[model.matcher]}, ${length} points${factor}; ${byteText(model.tableBytes)} of flash; ${model.hash.slice(0, 8)}`
}
