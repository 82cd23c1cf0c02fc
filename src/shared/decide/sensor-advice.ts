import type { SensorDecision, SettingResult } from './sensor-decision'

export const SENSOR_ADVICE_KINDS = ['gyro-needed', 'gyro-spare', 'range-clips'] as const
export type SensorAdviceKind = (typeof SENSOR_ADVICE_KINDS)[number]

export interface SensorAdvice {
  kind: SensorAdviceKind
  /** The setting that it is seen in. */
  result: SettingResult
}

/** Share of takes that clip, with the certainty of its interval, from which the range is too small. */
const OFTEN_CLIPPED = 0.05

/** What the sweep has to say on the target as it is; empty where nothing is certain. */
export function sensorAdvice({ own, results, tolerance }: SensorDecision): SensorAdvice[] {
  const advice: SensorAdvice[] = []
  const alone = results.find(({ axis }) => axis === 'gyro')
  if (alone?.verdict === 'worse' && alone.loss.value > tolerance)
    advice.push({ kind: 'gyro-needed', result: alone })
  if (alone?.verdict === 'enough') advice.push({ kind: 'gyro-spare', result: alone })
  if (own.clipped.low >= OFTEN_CLIPPED) advice.push({ kind: 'range-clips', result: own })
  return advice
}
