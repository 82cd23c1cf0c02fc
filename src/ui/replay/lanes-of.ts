import type { Replay } from '../../shared/model/replay'
import { AXES } from '../../shared/model/sample'
import type { Target } from '../../shared/model/target'
import { groupDigits, shortNumber } from '../../shared/present/numbers'
import { unitsPerCount } from '../../shared/present/target-choices'
import { extremes, type Lane, niceCeiling, rootHeight } from '../charts'

const AXIS_HEIGHT = 44
const ENERGY_HEIGHT = 92

/** Motion energy with its thresholds, then six traces in units; one scale a sensor. */
export function lanesOf(replay: Replay, target: Target): Lane[] {
  const { mps2, dps } = unitsPerCount(target)
  return [
    energyLane(replay),
    ...sensorLanes(replay, 0, mps2, 'm/s²', ['ax', 'ay', 'az']),
    ...sensorLanes(replay, 3, dps, 'deg/s', ['gx', 'gy', 'gz']),
  ]
}

function energyLane({ energy, onThreshold, offThreshold }: Replay): Lane {
  const at = (sample: number) => energy[sample] ?? 0
  const [, peak] = extremes(at, { from: 0, to: energy.length })
  const top = Math.max(peak, onThreshold * 2) * 1.05
  return {
    name: 'motion energy',
    unit: '',
    heightPx: ENERGY_HEIGHT,
    at,
    yOf: (value, height) => rootHeight(value, top, height),
    levels: [
      { value: onThreshold, text: `starts ${groupDigits(onThreshold)}`, dashed: false },
      { value: offThreshold, text: `ends ${groupDigits(offThreshold)}`, dashed: true },
    ],
    reach: `peak ${groupDigits(peak)}`,
    format: groupDigits,
  }
}

function sensorLanes(
  replay: Replay,
  first: 0 | 3,
  unitPerCount: number,
  unit: string,
  names: string[],
): Lane[] {
  const { counts } = replay
  const reading = (axis: number) => (sample: number) =>
    (counts[sample * AXES + axis] ?? 0) * unitPerCount
  const span = { from: 0, to: counts.length / AXES }
  const ends = names.flatMap((_, index) => extremes(reading(first + index), span))
  const reach = niceCeiling(Math.max(...ends.map(Math.abs)))
  return names.map((name, index) => ({
    name,
    unit,
    heightPx: AXIS_HEIGHT,
    at: reading(first + index),
    yOf: (value, height) => (height / 2) * (1 - value / reach),
    levels: [{ value: 0, text: '', dashed: false }],
    reach: `±${shortNumber(reach)} ${unit}`,
    format: (value) => value.toFixed(first === 0 ? 2 : 1),
  }))
}
