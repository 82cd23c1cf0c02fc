import { preferences } from '../../state/preferences'

/**
 * Cues told apart without looking: rising for start, falling for stop, one short one for a cut, two low
 * ones for a doubt.
 */
const CUES = {
  start: { notesHz: [523, 784], vibrateMs: [60] },
  stop: { notesHz: [784, 523], vibrateMs: [40, 60, 40] },
  cut: { notesHz: [1047], vibrateMs: [25] },
  doubt: { notesHz: [262, 262], vibrateMs: [150, 80, 150] },
} as const

export type Cue = keyof typeof CUES

const NOTE_S = 0.07
const LOUDNESS = 0.12

let context: AudioContext | null = null

/** Makes sound possible; browsers allow it only from within a tap. */
export function wakeSound(): void {
  context ??= 'AudioContext' in globalThis ? new AudioContext() : null
  if (context?.state === 'suspended') void context.resume()
}

export function cue(name: Cue): void {
  navigator.vibrate?.([...CUES[name].vibrateMs])
  if (!preferences.peek().sound || context?.state !== 'running') return
  for (const [index, hz] of CUES[name].notesHz.entries()) {
    note(context, hz, context.currentTime + index * NOTE_S)
  }
}

function note(audio: AudioContext, hz: number, atS: number): void {
  const oscillator = new OscillatorNode(audio, { frequency: hz })
  const gain = new GainNode(audio, { gain: 0 })
  // Ramps instead of steps: a step clicks.
  gain.gain.setValueAtTime(0, atS)
  gain.gain.linearRampToValueAtTime(LOUDNESS, atS + 0.01)
  gain.gain.linearRampToValueAtTime(0, atS + NOTE_S)
  oscillator.connect(gain).connect(audio.destination)
  oscillator.start(atS)
  oscillator.stop(atS + NOTE_S)
}
