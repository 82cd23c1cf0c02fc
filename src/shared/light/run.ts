import type { LinearRgb } from './luminance'
import type { LightPlayer } from './player'
import { IDLE, type LightTable, LOW } from './table'

/** Half of the shortest time between two keyframes: no plateau is missed. */
export const RUN_STEP_MS = 5

/** Answers are asked for every 20 ms, as fast as a board samples. */
const ASK_STEPS = 4

/** Full on for a duty of the player. */
const FULL = 65_535

/** Light over time, one colour each RUN_STEP_MS. */
export type Run = LinearRgb[]

/** The player's duties as linear light of three primaries. */
export function coloursOf(duty: Uint16Array): Run {
  const run: Run = []
  for (let i = 0; i + 2 < duty.length; i += 3) {
    run.push([duty[i]! / FULL, duty[i + 1]! / FULL, duty[i + 2]! / FULL])
  }
  return run
}

/** Ticks of an effect: starts it at rest, or lets the rest go on. */
function beginAt(player: LightPlayer, table: LightTable, effect: number): void {
  player.load(table)
  if (effect === LOW) player.low(true)
  // Past the fade-in of the rest and the least time between changes.
  player.ticks(65_000, 1)
  if (effect !== IDLE && effect !== LOW) player.start(effect)
}

/** An effect from its start, with all that follows it. */
export function runAlone(
  player: LightPlayer,
  table: LightTable,
  effect: number,
  durationMs: number,
): Run {
  beginAt(player, table, effect)
  return coloursOf(player.ticks(RUN_STEP_MS, Math.ceil(durationMs / RUN_STEP_MS)))
}

/** Two effects asked for in turn as fast as the player takes them. */
export function runInTurn(
  player: LightPlayer,
  table: LightTable,
  pair: readonly [number, number],
  durationMs: number,
): Run {
  beginAt(player, table, IDLE)
  const run: Run = []
  let wanted = 0
  for (let ms = 0; ms < durationMs; ms += ASK_STEPS * RUN_STEP_MS) {
    if (player.playing() !== pair[wanted]) player.start(pair[wanted]!)
    run.push(...coloursOf(player.ticks(RUN_STEP_MS, ASK_STEPS)))
    if (player.playing() === pair[wanted]) wanted = 1 - wanted
  }
  return run
}

/** Long enough to see a few rounds of an effect, of what follows it, and the way back to rest. */
export function runLengthMs(table: LightTable, effect: number): number {
  const entry = table.effects[effect]
  if (entry === undefined) return 0
  const { rounds, periodMs, fadeMs, kind } = entry.effect
  const shown = rounds === 0 ? 3 : Math.min(rounds, 4)
  const chance = kind === 'flicker' || kind === 'sparkle' ? 20_000 : 0
  const followed = table.effects[entry.next]?.effect
  const next = followed === undefined ? 0 : Math.min(followed.periodMs * 3, 10_000)
  const own = Math.max(chance, periodMs * shown, Math.min(periodMs * rounds, 20_000))
  return Math.min(own + fadeMs + next + 4_000, 90_000)
}
