import { type Signal, signal } from '@preact/signals'
import type { Span } from '../charts'

/** Speeds that a replay runs at; 1 is as it was. */
export const PACES = [1, 1 / 2, 1 / 4, 1 / 8] as const
export type Pace = (typeof PACES)[number]

/** A page that was hidden goes on from where it was, not with a jump. */
const LONGEST_STEP_MS = 100

/** The one place in time that traces, energy, light and prop show. */
export class PlayHead {
  /** Sample, with fractions while it runs; within the span. */
  readonly at: Signal<number>
  readonly span: Signal<Span>
  readonly playing = signal(false)
  readonly pace = signal<Pace>(1)
  readonly loop = signal(false)
  readonly #rateHz: number

  constructor(rateHz: number, span: Span) {
    this.#rateHz = rateHz
    this.span = signal(span)
    this.at = signal(span.from)
  }

  /** The whole sample that is shown. */
  get sample(): number {
    return Math.floor(this.at.value)
  }

  #last(): number {
    return Math.max(this.span.peek().from, this.span.peek().to - 1)
  }

  moveTo(sample: number): void {
    this.at.value = Math.min(Math.max(sample, this.span.peek().from), this.#last())
  }

  /** By hand: stops, so that what was looked for stays. */
  step(samples: number): void {
    this.playing.value = false
    this.moveTo(Math.floor(this.at.peek()) + samples)
  }

  /** Shows this span and goes to a sample of it. */
  show(span: Span, sample: number): void {
    this.span.value = span
    this.moveTo(sample)
  }

  /** From the end it begins anew. */
  toggle(): void {
    if (!this.playing.peek() && this.at.peek() >= this.#last()) this.moveTo(this.span.peek().from)
    this.playing.value = !this.playing.peek()
  }

  /** Goes on by the time that passed; at the end it begins anew or stops. */
  advance(passedMs: number): void {
    const ms = Math.min(Math.max(passedMs, 0), LONGEST_STEP_MS)
    const next = this.at.peek() + (ms / 1000) * this.#rateHz * this.pace.peek()
    const { from } = this.span.peek()
    if (next < this.#last()) {
      this.at.value = next
      return
    }
    this.playing.value = this.loop.peek()
    this.at.value = this.loop.peek() ? from : this.#last()
  }
}

/**
 * What a key means for a replay; null when it means nothing.
 * Space plays, arrows go by a sample, with shift by ten, up and down change the speed, L loops.
 */
export function actOn(head: PlayHead, key: string, shift: boolean): (() => void) | null {
  const pace = (by: number) => {
    const next = PACES[PACES.indexOf(head.pace.peek()) + by]
    if (next !== undefined) head.pace.value = next
  }
  const acts: Record<string, () => void> = {
    ' ': () => head.toggle(),
    k: () => head.toggle(),
    l: () => {
      head.loop.value = !head.loop.peek()
    },
    ArrowLeft: () => head.step(shift ? -10 : -1),
    ArrowRight: () => head.step(shift ? 10 : 1),
    ArrowUp: () => pace(-1),
    ArrowDown: () => pace(1),
    Home: () => head.moveTo(head.span.peek().from),
    End: () => head.moveTo(head.span.peek().to),
  }
  return acts[key.length === 1 ? key.toLowerCase() : key] ?? null
}
