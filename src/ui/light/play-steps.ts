import { notesOf, vibrationPattern } from '../../shared/light/steps'
import type { Step } from '../../shared/model/light'

const LOUDNESS = 0.12
const RAMP_S = 0.008

let context: AudioContext | null = null

/** Plays a tune; browsers allow it only within a tap, or after sound was woken by one. */
export function playTune(steps: readonly Step[]): void {
  if (!('AudioContext' in globalThis) || steps.length === 0) return
  context ??= new AudioContext()
  if (context.state === 'suspended') void context.resume()
  const startS = context.currentTime + 0.02
  for (const { hz, atMs, ms } of notesOf(steps)) {
    note(context, hz, startS + atMs / 1000, ms / 1000)
  }
}

function note(audio: AudioContext, hz: number, atS: number, lengthS: number): void {
  const oscillator = new OscillatorNode(audio, { frequency: hz })
  const gain = new GainNode(audio, { gain: 0 })
  // Ramps instead of steps: a step clicks.
  const ramp = Math.min(RAMP_S, lengthS / 2)
  gain.gain.setValueAtTime(0, atS)
  gain.gain.linearRampToValueAtTime(LOUDNESS, atS + ramp)
  gain.gain.setValueAtTime(LOUDNESS, atS + lengthS - ramp)
  gain.gain.linearRampToValueAtTime(0, atS + lengthS)
  oscillator.connect(gain).connect(audio.destination)
  oscillator.start(atS)
  oscillator.stop(atS + lengthS)
}

/** Whether this phone can vibrate from a page at all. */
export const CAN_VIBRATE = typeof navigator !== 'undefined' && 'vibrate' in navigator

export function playVibration(steps: readonly Step[]): void {
  if (CAN_VIBRATE && steps.length > 0) navigator.vibrate(vibrationPattern(steps))
}
