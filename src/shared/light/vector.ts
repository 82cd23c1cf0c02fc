import type { LightPlayer } from './player'
import type { LightTable } from './table'

/** As in `light_vector()` of the firmware's `effects/light_vector.c`. */
const TICKS = 200
const TICK_MS = 23

/** FNV-1a of 32 bits (Fowler, Noll, Vo). */
const OFFSET = 0x811c9dc5
const PRIME = 0x01000193

/**
 * Hash of every duty while each effect of a table is asked for in turn: the board computes the same,
 * to the bit, or something is wrong with its build.
 */
export function lightVector(player: LightPlayer, table: LightTable): number {
  let hash = OFFSET
  const take = (byte: number) => {
    hash = Math.imul(hash ^ byte, PRIME) >>> 0
  }
  player.load(table)
  for (let effect = 0; effect < table.effects.length; effect++) {
    player.low(effect % 2 === 1)
    player.start(effect)
    for (const duty of player.ticks(TICK_MS, TICKS)) {
      take(duty & 255)
      take(duty >> 8)
    }
  }
  return hash
}
