import { AXES } from '../model/sample'
import type { Observation } from './observations'
import type { VectorStep } from './vector'

/** Swings that are laid over the movement. */
const CYCLES = 5
/** Sizes tried, counts: each twice the one before, so that the first to be rejected is near. */
const LEAST_SWING = 125
const MOST_SWING = 32000

/**
 * A recognised take bent out of shape until it is no gesture any more: a swing on every axis, laid
 * over its movement and made larger step by step. For models that accept all they were trained on.
 * @param run what the model says to steps
 */
export function bentTake(
  hit: Observation,
  run: (from: string, steps: VectorStep[]) => Observation,
): Observation | null {
  const [event] = hit.events
  if (event === undefined) return null
  for (let swing = LEAST_SWING; swing <= MOST_SWING; swing *= 2) {
    const bend = bender(swing, event.start, event.end)
    const bent = run(`${hit.from}, with a swing of ${swing} counts laid over it`, bend(hit.steps))
    if (bent.events.length === 1 && bent.events[0]?.reason === 'far') return bent
  }
  return null
}

function bender(swing: number, start: number, end: number) {
  const swung = (value: number, at: number, axis: number) => {
    if (at < start || at >= end) return value
    // Another phase on every axis; nothing at the edges, so that the cut stays where it was.
    const along = (at - start) / (end - start)
    const wave = Math.sin(Math.PI * along) * Math.sin(2 * Math.PI * CYCLES * along + axis)
    return Math.max(-32768, Math.min(32767, Math.round(value + swing * wave)))
  }
  return (steps: VectorStep[]): VectorStep[] => {
    let before = 0
    return steps.map((step) => {
      if (!('samples' in step)) return step
      const from = before
      before += step.samples.length / AXES
      return {
        samples: step.samples.map((value, i) =>
          swung(value, from + Math.floor(i / AXES), i % AXES),
        ),
      }
    })
  }
}
