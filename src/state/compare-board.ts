import type { RecogniserClient } from '../recogniser/client'
import type { BoardAnswer } from '../shared/firmware/board-answer'
import { fail, ok, type Result } from '../shared/model/result'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { App } from './app'
import type { Shelf } from './shelf'

/**
 * Compares what a board's self-test printed with the vectors that the firmware of the current library
 * carries: makes them anew, as the same library and model give the same ones.
 */
export async function compareBoard(
  { store, current }: Shelf,
  train: App['train'],
  recogniser: RecogniserClient,
  text: string,
): Promise<Result<BoardAnswer>> {
  const open = current.value
  if (open === null) return fail('board/no-library', OPEN_LIBRARY.noneToCompare)
  const trained = await train()
  if (!trained.ok) return trained
  const full = await store.loadFull(open.id)
  if (full === null) return fail('board/no-library', OPEN_LIBRARY.goneToCompare)
  const vectors = await recogniser.vectors(full, trained.value)
  if (!vectors.ok) return vectors
  const { compareBoardAnswer } = await import('../shared/firmware/board-answer')
  return ok(compareBoardAnswer(text, trained.value.hash, vectors.value))
}
