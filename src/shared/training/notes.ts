import type { RecogniserModel } from '../model/recogniser-model'
import { TRAINING_NOTES } from '../words/en/training-notes'
import { notesOnData } from './data-notes'
import type { Example } from './examples'
import type { Prepared } from './prepare'
import { HAND_MARGIN_MS } from './press'
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
      notes.push(TRAINING_NOTES.fewTakes({ gesture: name, count, least: FEW_TAKES }))
    }
  }
  const lost = found.missed + found.long + found.short
  const all = lost + found.ok + found.split
  if (lost > 0) {
    notes.push(TRAINING_NOTES.notCut({ ...found, lost, all }))
  }
  if (found.split > 0) notes.push(TRAINING_NOTES.split(found.split, all))
  if (new Set(examples.map((e) => e.tester)).size < 2) {
    notes.push(TRAINING_NOTES.oneTester)
  }
  if (prepared.backgrounds.length === 0 && !model.button) {
    notes.push(TRAINING_NOTES.noBackground)
  }
  if (model.button) notes.push(pressNote(prepared))
  return [...notes, ...notesOnData(prepared)]
}

/** What the figures of a model with a button take for granted. */
function pressNote({ takes }: Prepared): string {
  const unknown = takes.filter(({ whole }) => whole === true).length
  return TRAINING_NOTES.pressed({ unknown, takes: takes.length, marginMs: HAND_MARGIN_MS })
}

function takesOf({ gestures, takes }: Prepared, id: string): number {
  return takes.filter(({ gesture }) => gestures[gesture]?.id === id).length
}

function absentNote(name: string, takes: number): string {
  if (takes === 0) return TRAINING_NOTES.noTakes(name)
  return TRAINING_NOTES.noMovement(name, takes)
}
