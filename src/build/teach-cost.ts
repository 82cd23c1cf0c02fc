import type { FullLibrary } from '../shared/model/library'
import { fail, ok, type Result } from '../shared/model/result'
import type { RunParts } from '../shared/parts/part-jobs'
import type { OnProgress } from '../shared/protocol/recogniser'
import { type TeachCost, teachCostInParts } from '../shared/teach/teach-cost'
import { TEACH_TAKES } from '../shared/teach/teach-run'
import { prepareLibrary } from '../shared/training/prepare'
import {
  type TeachCostWords,
  teachBackgroundWords,
  teachCostWords,
} from '../shared/words/en/teach-words'

/** As `npm run evaluate -- PATH --teach NAME` answers. */
export interface TeachReport {
  gesture: string
  tester: string
  cost: TeachCost
  words: TeachCostWords
}

/**
 * What it costs the other gestures when one is not trained but taught on the prop, with the first takes of
 * the first tester who made enough.
 */
export async function teachReport(
  run: RunParts,
  full: FullLibrary,
  name: string,
  onProgress: OnProgress,
): Promise<Result<TeachReport>> {
  const gesture = full.library.gestures.find((one) => one.name === name)
  if (gesture === undefined) {
    const names = full.library.gestures.map((one) => one.name).join(', ')
    return fail('usage', `--teach takes the name of a gesture: there are ${names}.`)
  }
  const takes = prepareLibrary(full).takes.filter(({ take }) => take.gestureId === gesture.id)
  const codes = [...new Set(takes.map(({ take }) => take.testerCode))].sort()
  const made = (code: string) => takes.filter(({ take }) => take.testerCode === code)
  const tester = codes.find((code) => made(code).length >= TEACH_TAKES)
  if (tester === undefined) {
    return fail(
      'teach/few-takes',
      `No tester made ${name} ${TEACH_TAKES} times: record that many by one.`,
    )
  }
  const taught = { gestureId: null, takes: made(tester).slice(0, TEACH_TAKES) }
  const cost = await teachCostInParts(run, without(full, gesture.id), taught, onProgress)
  if (!cost.ok) return cost
  return ok({ gesture: name, tester, cost: cost.value, words: teachCostWords(cost.value) })
}

function without({ library, recordings }: FullLibrary, gestureId: string): FullLibrary {
  return {
    library: { ...library, gestures: library.gestures.filter(({ id }) => id !== gestureId) },
    recordings: recordings.filter(
      ({ recording }) => recording.kind !== 'take' || recording.gestureId !== gestureId,
    ),
  }
}

export function teachText({ gesture, tester, cost, words }: TeachReport): string {
  const head = `${gesture} taught with ${TEACH_TAKES} takes of ${tester}, unknown to the model:`
  const lines = [head, words.seen, words.means, words.todo, teachBackgroundWords(cost)]
  return lines.filter((line) => line !== '').join('\n')
}
