import type { Replay } from '../../shared/model/replay'
import { AXES } from '../../shared/model/sample'
import type { Target } from '../../shared/model/target'
import { unitsPerCount } from '../../shared/present/target-choices'
import { decisionMarks } from '../../shared/replay/marks'
import { groupDigits, shortNumber } from '../../shared/words/en/numbers'
import { REPLAY_TRACES } from '../../shared/words/en/replay-traces'
import { extremes, type Lane, niceCeiling, rootHeight } from '../charts'

const AXIS_HEIGHT = 44
const ENERGY_HEIGHT = 92

/** Another replay shown behind this one, so many samples later. */
export interface Beside {
  replay: Replay
  shift: number
}

/** Motion energy with its thresholds, then six traces in units; one scale a sensor. */
export function lanesOf(replay: Replay, target: Target, beside: Beside | null = null): Lane[] {
  const { mps2, dps } = unitsPerCount(target)
  return [
    energyLane(replay, beside),
    ...sensorLanes(replay, beside, 0, mps2, 'm/s²', ['ax', 'ay', 'az']),
    ...sensorLanes(replay, beside, 3, dps, 'deg/s', ['gx', 'gy', 'gz']),
  ]
}

/** A trace of the replay beside, on the samples of this one. */
function ghostOf(
  beside: Beside | null,
  at: (replay: Replay) => (sample: number) => number,
): Pick<Lane, 'ghost'> {
  if (beside === null) return {}
  const { replay, shift } = beside
  const own = at(replay)
  const to = shift + replay.energy.length
  return { ghost: { at: (sample) => own(sample - shift), from: shift, to } }
}

const energyAt = (replay: Replay) => (sample: number) => replay.energy[sample] ?? 0

function peakOf(replay: Replay): number {
  return extremes(energyAt(replay), { from: 0, to: replay.energy.length })[1]
}

function energyLane(replay: Replay, beside: Beside | null): Lane {
  const { onThreshold, offThreshold } = replay
  const at = energyAt(replay)
  const peak = Math.max(peakOf(replay), beside === null ? 0 : peakOf(beside.replay))
  const top = Math.max(peak, onThreshold * 2) * 1.05
  return {
    name: REPLAY_TRACES.energy.name,
    unit: '',
    heightPx: ENERGY_HEIGHT,
    at,
    yOf: (value, height) => rootHeight(value, top, height),
    levels: [
      { value: onThreshold, text: REPLAY_TRACES.energy.starts(onThreshold), dashed: false },
      { value: offThreshold, text: REPLAY_TRACES.energy.ends(offThreshold), dashed: true },
    ],
    reach: REPLAY_TRACES.energy.peak(peakOf(replay)),
    format: groupDigits,
    ...ghostOf(beside, energyAt),
    marks: decisionMarks(replay).flatMap(({ armed, decided }) => [
      { sample: armed, text: REPLAY_TRACES.energy.armed },
      { sample: decided, text: REPLAY_TRACES.energy.decided },
    ]),
  }
}

function sensorLanes(
  replay: Replay,
  beside: Beside | null,
  first: 0 | 3,
  unitPerCount: number,
  unit: string,
  names: string[],
): Lane[] {
  const reading = (axis: number) => (from: Replay) => (sample: number) =>
    (from.counts[sample * AXES + axis] ?? 0) * unitPerCount
  const shown = beside === null ? [replay] : [replay, beside.replay]
  const ends = shown.flatMap((one) =>
    names.flatMap((_, index) =>
      extremes(reading(first + index)(one), { from: 0, to: one.counts.length / AXES }),
    ),
  )
  const reach = niceCeiling(Math.max(...ends.map(Math.abs)))
  return names.map((name, index) => ({
    name,
    unit,
    heightPx: AXIS_HEIGHT,
    at: reading(first + index)(replay),
    ...ghostOf(beside, reading(first + index)),
    yOf: (value, height) => (height / 2) * (1 - value / reach),
    levels: [{ value: 0, text: '', dashed: false }],
    reach: `±${shortNumber(reach)} ${unit}`,
    format: (value) => value.toFixed(first === 0 ? 2 : 1),
  }))
}
