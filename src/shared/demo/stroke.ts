/**
 * Coordinates of the hand, relative to the held pose. World: x to the person's right, y forward,
 * z up, origin at the grip point when held. Attitude of the hand: Rz(yaw) · Rx(pitch) · Ry(roll).
 */
export const HAND_AXES = ['x', 'y', 'z', 'yaw', 'pitch', 'roll'] as const
export type HandAxis = (typeof HAND_AXES)[number]

/** Smooth change from 0 to `amount` that stays; m or rad. */
export interface Step {
  kind: 'step'
  axis: HandAxis
  startS: number
  durationS: number
  amount: number
}

/** Oscillation that fades in and out, and leaves nothing behind; m or rad. */
export interface Wave {
  kind: 'wave'
  axis: HandAxis
  startS: number
  durationS: number
  amount: number
  frequencyHz: number
  /** rad at the start. */
  phase: number
  /** Share of the duration taken by each fade, above 0 to 0.5. */
  fade: number
}

/** What movements are made of. Strokes add up, so they may overlap and start from any pose. */
export type Stroke = Step | Wave

/** Value with its first and second derivative by time in seconds. */
export interface Jet {
  value: number
  rate: number
  accel: number
}

/**
 * Minimum-jerk course from 0 to 1: 10 u³ - 15 u⁴ + 6 u⁵ (Flash and Hogan, J. Neurosci. 5(7),
 * 1985). Peak rate is 1.875 / duration, peak acceleration 5.774 / duration².
 */
export function minimumJerk(sinceStartS: number, durationS: number): Jet {
  const u = sinceStartS / durationS
  if (u <= 0) return { value: 0, rate: 0, accel: 0 }
  if (u >= 1) return { value: 1, rate: 0, accel: 0 }
  const rest = 1 - u
  return {
    value: u * u * u * (10 - 15 * u + 6 * u * u),
    rate: (30 * u * u * rest * rest) / durationS,
    accel: (60 * u * rest * (1 - 2 * u)) / (durationS * durationS),
  }
}

/** Product rule. */
export function multiply(a: Jet, b: Jet): Jet {
  return {
    value: a.value * b.value,
    rate: a.rate * b.value + a.value * b.rate,
    accel: a.accel * b.value + 2 * a.rate * b.rate + a.value * b.accel,
  }
}

export function sine(timeS: number, frequencyHz: number, phase: number): Jet {
  const angularRate = 2 * Math.PI * frequencyHz
  const angle = angularRate * timeS + phase
  const value = Math.sin(angle)
  return {
    value,
    rate: angularRate * Math.cos(angle),
    accel: -angularRate * angularRate * value,
  }
}

function waveAt(wave: Wave, sinceStartS: number): Jet {
  if (sinceStartS <= 0 || sinceStartS >= wave.durationS) return { value: 0, rate: 0, accel: 0 }
  const fadeS = wave.fade * wave.durationS
  const rise = minimumJerk(sinceStartS, fadeS)
  const fall = minimumJerk(sinceStartS - (wave.durationS - fadeS), fadeS)
  const envelope = {
    value: rise.value - fall.value,
    rate: rise.rate - fall.rate,
    accel: rise.accel - fall.accel,
  }
  return multiply(envelope, sine(sinceStartS, wave.frequencyHz, wave.phase))
}

/** Contribution of a stroke at a time, m or rad, per s, per s². */
export function strokeAt(stroke: Stroke, timeS: number): Jet {
  const since = timeS - stroke.startS
  const unit = stroke.kind === 'step' ? minimumJerk(since, stroke.durationS) : waveAt(stroke, since)
  return {
    value: stroke.amount * unit.value,
    rate: stroke.amount * unit.rate,
    accel: stroke.amount * unit.accel,
  }
}

export function strokeEndS(stroke: Stroke): number {
  return stroke.startS + stroke.durationS
}

/** Time at which the last of the strokes ends, s; 0 without any. */
export function lastEndS(strokes: readonly Stroke[]): number {
  return strokes.reduce((latest, stroke) => Math.max(latest, strokeEndS(stroke)), 0)
}

export function shifted(strokes: readonly Stroke[], byS: number): Stroke[] {
  return strokes.map((stroke) => ({ ...stroke, startS: stroke.startS + byS }))
}
