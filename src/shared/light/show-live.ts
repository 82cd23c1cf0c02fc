import { MOST_FLASHES } from './flashes'
import { answersInOrder, type LightOwner, lightOf, lightTable } from './library-light'
import type { LightPlayer } from './player'
import { RUN_STEP_MS, runAlone, runLengthMs } from './run'
import { FLASH_COUNTERS } from './safety'

/** Two changes of light at this distance are three flashes a second. */
const LEAST_CHANGE_MS = 1000 / (2 * MOST_FLASHES)

/**
 * Whether the light may be shown while gestures come as they will: no effect flashes too often by
 * itself, and changes from one to the next keep their distance. Quick, so that live is not delayed.
 */
export function mayShowLive(player: LightPlayer, library: LightOwner): boolean {
  if (lightOf(library).minChangeMs < LEAST_CHANGE_MS) return false
  const table = lightTable(library)
  return answersInOrder(library).every((_, number) => {
    const run = runAlone(player, table, number, Math.min(12_000, runLengthMs(table, number)))
    return FLASH_COUNTERS.every((count) => count(run, RUN_STEP_MS).flashes <= MOST_FLASHES)
  })
}
