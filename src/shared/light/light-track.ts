import type { Library } from '../model/library'
import type { RecogniserModel } from '../model/recogniser-model'
import type { Replay } from '../model/replay'
import { decisionMarks } from '../replay/marks'
import { effectNumber, lightOf, lightTable } from './library-light'
import type { LightPlayer } from './player'
import { screenCss } from './screen-colour'
import { REJECT, REST } from './table'

/** Past the fade-in of the rest and the least time between changes. */
const SETTLED_MS = 65_000

/**
 * The light of the prop at every sample of a replay, as CSS colours: at rest, and answering each
 * decision from the sample it fell on, played by the board's own player in steps of its timer.
 */
export function lightTrack(
  player: LightPlayer,
  library: Library,
  model: RecogniserModel,
  replay: Replay,
): string[] {
  const starts = new Map<number, number>()
  decisionMarks(replay).forEach(({ decided }, i) => {
    const { kind, gesture } = replay.events[i]!
    const id = model.gestures[gesture ?? -1]?.id ?? null
    starts.set(decided, kind === 'gesture' ? effectNumber(library, id) : REJECT)
  })
  const { pwmBits } = lightOf(library).led
  const top = 2 ** pwmBits - 1
  player.load(lightTable(library))
  player.ticks(SETTLED_MS, 1)
  let playedMs = 0
  return Array.from({ length: replay.energy.length }, (_, sample) => {
    const effect = starts.get(sample) ?? REST
    if (effect !== REST) player.start(effect)
    const dueMs = Math.round((1000 * sample) / replay.rateHz)
    const duty = player.ticks(dueMs - playedMs, 1)
    playedMs = dueMs
    const share = (channel: number) => player.pwm(duty[channel] ?? 0, pwmBits) / top
    return screenCss([share(0), share(1), share(2)])
  })
}
