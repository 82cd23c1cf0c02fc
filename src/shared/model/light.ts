/** Kinds of effects, in the order of `enum mvw_light_kind` in `src/core/mvw_light.h`. */
export const LIGHT_KINDS = [
  'off',
  'steady',
  'breathe',
  'flicker',
  'sparkle',
  'hue',
  'keys',
] as const
export type LightKind = (typeof LIGHT_KINDS)[number]

/** How a keyframe passes into the next, in the order of `enum mvw_light_ease`. */
export const EASES = ['step', 'linear', 'smooth', 'in', 'out'] as const
export type Ease = (typeof EASES)[number]

/** What an effect does when another is asked for, in the order of `enum mvw_light_rule`. */
export const LIGHT_RULES = ['at-once', 'after-round', 'to-end'] as const
export type LightRule = (typeof LIGHT_RULES)[number]

/** Share of red, green and blue in linear light, whole numbers 0 to 255; not sRGB. */
export type Emission = [number, number, number]

export interface LightKey {
  /** From the start of the round, whole ms; the first is 0, the last is the effect's period. */
  atMs: number
  /** Lightness in equal-looking steps, 0 to 255; 255 is L* = 100 (CIE 1976). */
  level: number
  colour: Emission
  ease: Ease
}

/** One effect; fields as in `mvw_light_effect`, of which some kinds use only a part. */
export interface LightEffect {
  kind: LightKind
  rule: LightRule
  /** Effect that follows: id of a gesture, 'reject', or null for rest. */
  next: string | null
  /** Lightness 0 to 255, low <= high. */
  low: number
  high: number
  colour: Emission
  /** 'hue': start, 256 a turn, and how far it walks, (turn + 1) / 256. */
  hue: number
  turn: number
  /** Rounds until the next effect, 0 to 65535; 0: until another one is asked for. */
  rounds: number
  /** Length of a round, ms; 20 to 65535. */
  periodMs: number
  /** Crossfade at its start, ms; 0 to 65535. */
  fadeMs: number
  /** 'keys': 2 to 64; otherwise empty. */
  keys: LightKey[]
}

/** One step of a tune (Hz, 0 for a pause) or of a vibration (strength 0 to 255). */
export interface Step {
  value: number
  ms: number
}

/** How the prop answers: light, sound, vibration. */
export interface Answer {
  light: LightEffect
  sound: Step[]
  vibration: Step[]
}

/** Answers that belong to no gesture: at rest, to a rejected movement, at rest with low cells. */
export const OWN_ANSWERS = ['idle', 'reject', 'low'] as const
export type OwnAnswer = (typeof OWN_ANSWERS)[number]

/** A figure that is not known better than by its limits. */
export interface Spread {
  min: number
  typ: number
  max: number
}

/** One colour of the LED and how it is driven. */
export interface Emitter {
  /** Forward voltage at the current, V; from the data sheet. */
  forwardV: Spread
  /** Current at full duty, mA. */
  currentMa: number
  /** Series resistor, ohm. */
  resistorOhm: number
}

export interface LedSetup {
  /** Hz; above 0. */
  pwmHz: number
  /** The timer counts 0 to 2^bits - 1; 4 to 16. */
  pwmBits: number
  /** Red, green, blue. */
  emitters: [Emitter, Emitter, Emitter]
  /** Most for all emitters together, mA; 0: no limit. */
  limitMa: number
  /** Switch and driver in series with each LED, ohm. */
  driverOhm: number
}

/** What feeds the prop and what draws on it besides the LED. */
export interface PowerSetup {
  /** Key of the preset the cell's fields came from, or 'custom'. */
  cell: string
  /** Cells in series. */
  series: number
  capacityMah: Spread
  freshV: number
  nominalV: number
  /** Voltage of a cell at which it counts as empty. */
  endV: number
  /** Internal resistance of a cell, ohm. */
  cellOhm: number
  /** Largest continuous current of a cell, mA. */
  maxMa: number
  /** Share lost by itself in a year, percent. */
  selfDischargePercent: number
  /** 'boost': a converter gives boostV whatever the cells have left. */
  supply: 'direct' | 'boost'
  boostV: number
  /** Of the converter, 0.3 to 1. */
  boostEfficiency: number
  processorMa: Spread
  sensorMa: Spread
  /** LED driver, regulator and the rest while switched on. */
  standbyMa: Spread
  /** While switched off: switch, regulator, protection. */
  offUa: Spread
  answersPerHour: number
}

/** The designer's word that an effect over a limit is exported on purpose. */
export interface Acknowledgement {
  text: string
  /** RFC 3339 in UTC. */
  at: string
  /** What was over the limit when it was written, one sentence each; others are not covered. */
  covers: string[]
}

/** Light, LED and cells of a library; the answers of gestures are with the gestures. */
export interface LightSettings {
  answers: Record<OwnAnswer, Answer>
  /** Least time between one change of effect and the next that is asked for, ms. */
  minChangeMs: number
  led: LedSetup
  power: PowerSetup
  acknowledgement: Acknowledgement | null
}
