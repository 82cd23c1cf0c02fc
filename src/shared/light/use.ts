import type { LightUse } from '../power/runtime'
import { type LightOwner, lightTable } from './library-light'
import type { LightPlayer } from './player'
import { RUN_STEP_MS, type Run, runAlone } from './run'
import { FIRST_GESTURE, IDLE } from './table'

type Triple = [number, number, number]

const REST_LOOK_MS = 20_000
/** An answer that never ends by itself is counted for this long. */
const LONGEST_ANSWER_MS = 30_000

/** How much light a library gives: at rest, and for an answer, the mean over its gestures. */
export function lightUse(player: LightPlayer, library: LightOwner): LightUse {
  const table = lightTable(library)
  const restDuty = meanOf(runAlone(player, table, IDLE, REST_LOOK_MS))
  const answers = library.gestures.map((_, index) => {
    const run = runAlone(player, table, FIRST_GESTURE + index, LONGEST_ANSWER_MS)
    const mean = meanOf(run)
    const seconds = (run.length * RUN_STEP_MS) / 1000
    return each((channel) => Math.max(0, (mean[channel] - restDuty[channel]) * seconds))
  })
  const answerSeconds = each(
    (channel) =>
      answers.reduce((sum, answer) => sum + answer[channel], 0) / Math.max(1, answers.length),
  )
  return { restDuty, answerSeconds }
}

function meanOf(run: Run): Triple {
  return each(
    (channel) => run.reduce((sum, colour) => sum + colour[channel], 0) / Math.max(1, run.length),
  )
}

function each(of: (channel: 0 | 1 | 2) => number): Triple {
  return [of(0), of(1), of(2)]
}
