import { checkStatus } from '../core/status'
import { type ModuleMemory, WasmMemory } from '../core/wasm-memory'
import { type LightTable, tableWords } from './table'

/** What `src/core/port/light_wasm.c` exports. Pointers are byte offsets. */
export interface LightExports extends ModuleMemory {
  light_load(words: number, effectCount: number, keyCount: number): number
  light_start(effect: number): number
  light_low(low: number): void
  light_tick(elapsedMs: number, count: number, duty: number): void
  light_playing(): number
  luminance(level: number): number
  light_pwm(duty: number, top: number): number
}

/** What became of an effect that was asked for. */
export type Taken = 'started' | 'waits' | 'not-taken'

/** The C player of the board, running here. One instance plays one light. */
export class LightPlayer {
  private readonly exports: LightExports
  private readonly memory: WasmMemory
  private readonly mark: number

  constructor(exports: LightExports) {
    this.exports = exports
    this.memory = new WasmMemory(exports)
    this.mark = this.memory.mark()
  }

  /**
   * Starts at rest with these effects.
   * @throws CoreError 'core/argument' when the table is not sound; see `checkEffect` for words.
   */
  load(table: LightTable): void {
    const { words, keyCount } = tableWords(table)
    this.memory.release(this.mark)
    const at = this.memory.take(words.length * 2)
    new Uint16Array(this.exports.memory.buffer, at, words.length).set(words)
    const status = this.exports.light_load(at, table.effects.length, keyCount)
    this.memory.release(this.mark)
    checkStatus(status)
  }

  /** Asks for an effect by its number in the table. */
  start(effect: number): Taken {
    const status = checkStatus(this.exports.light_start(effect))
    return status === 1 ? 'started' : status === 2 ? 'waits' : 'not-taken'
  }

  /** Low cells: another effect at rest. */
  low(isLow: boolean): void {
    this.exports.light_low(isLow ? 1 : 0)
  }

  /** Number of the effect that plays. */
  playing(): number {
    return this.exports.light_playing()
  }

  /** Duty of red, green and blue after each of `count` ticks; 65535 is full on. */
  ticks(elapsedMs: number, count: number): Uint16Array {
    const at = this.memory.take(count * 6)
    this.exports.light_tick(elapsedMs, count, at)
    const duty = new Uint16Array(this.exports.memory.buffer, at, count * 3).slice()
    this.memory.release(this.mark)
    return duty
  }

  /** Luminance of a lightness level as a share of 65535; level 0 to 255 with fractions of 1/256. */
  luminance(level: number): number {
    return this.exports.luminance(Math.round(level * 256))
  }

  /** Compare value of a timer of so many bits. */
  pwm(duty: number, bits: number): number {
    return this.exports.light_pwm(duty, 2 ** bits - 1)
  }
}
