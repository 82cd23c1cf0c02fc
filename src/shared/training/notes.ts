import type { RecogniserModel } from '../model/recogniser-model'
import { notesOnData } from './data-notes'
import type { Example } from './examples'
import type { Prepared } from './prepare'
import type { SegmenterProposal } from './segmenter-search'

/** Fewer takes than this leave a gesture's threshold a guess. */
const FEW_TAKES = 5

/** Sentences on what training noticed, most important first. */
export function notesOn(
  prepared: Prepared,
  { found }: SegmenterProposal,
  model: RecogniserModel,
  examples: readonly Example[],
): string[] {
  const notes: string[] = []
  const absent = prepared.gestures.filter(({ id }) => !model.gestures.some((g) => g.id === id))
  for (const { id, name } of absent) notes.push(absentNote(name, takesOf(prepared, id)))
  for (const { id, name } of model.gestures) {
    const count = examples.filter((e) => prepared.gestures[e.gesture]?.id === id).length
    if (count < FEW_TAKES) {
      notes.push(
        `${name} has ${count} usable ${count === 1 ? 'take' : 'takes'}: record at least ${FEW_TAKES}.`,
      )
    }
  }
  const lost = found.missed + found.long + found.short
  const all = lost + found.ok + found.split
  if (lost > 0) {
    notes.push(
      `In ${lost} of ${all} takes no single movement was cut: ${found.missed} without any, ${found.short} too short, ${found.long} too long.`,
    )
  }
  if (found.split > 0)
    notes.push(
      `${found.split} of ${all} takes were cut into several movements; the longest was used.`,
    )
  if (new Set(examples.map((e) => e.tester)).size < 2) {
    notes.push('All takes are by one tester: how it does for others is not known.')
  }
  if (prepared.backgrounds.length === 0 && !model.button) {
    notes.push('There is no background recording: thresholds have not seen what is not a gesture.')
  }
  return [...notes, ...notesOnData(prepared)]
}

function takesOf({ gestures, takes }: Prepared, id: string): number {
  return takes.filter(({ gesture }) => gestures[gesture]?.id === id).length
}

function absentNote(name: string, takes: number): string {
  if (takes === 0) return `${name} has no takes and is not in the model.`
  return `No movement was found in the ${takes === 1 ? 'take' : `${takes} takes`} of ${name}, so it is not in the model: hold a pose with a button (Prop, Training), or perform it with more motion.`
}
