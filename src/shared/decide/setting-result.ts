import { rateByTester } from '../statistics/clustered'
import { mcnemarExact } from '../statistics/mcnemar'
import { type PairedLoss, pairedLoss } from '../statistics/paired'
import { poissonPerHour } from '../statistics/poisson'
import { normalHalfWidth } from '../statistics/wilson'
import type { SensorSetting, SettingResult, SweepVerdict } from './sensor-decision'
import type { SensorValue } from './sensor-part'

/** What a setting costs against the target's own, on the same takes. */
export function settingResult(
  setting: SensorSetting,
  axis: SettingResult['axis'],
  value: SensorValue,
  own: SensorValue,
  tolerance: number,
): SettingResult {
  const before = new Map(own.answers.map(({ takeId, right }) => [takeId, right]))
  let [onlyOwn, onlyThis] = [0, 0]
  for (const { takeId, right } of value.answers) {
    if (right && before.get(takeId) === false) onlyThis++
    if (!right && before.get(takeId) === true) onlyOwn++
  }
  const loss = pairedLoss(onlyOwn, onlyThis, value.answers.length)
  const verdict = verdictOn(loss, tolerance)
  return {
    setting,
    axis,
    accuracy: rateByTester(value.answers.map(({ tester, right }) => ({ tester, hit: right }))),
    loss,
    mcnemar: mcnemarExact(onlyOwn, onlyThis),
    verdict,
    takesNeeded: verdict === 'open' ? takesNeeded(loss, tolerance) : null,
    background: backgroundOf(value),
    clipped: rateByTester(value.clipped.map(({ tester, clipped }) => ({ tester, hit: clipped }))),
    flashBytes: value.flashBytes,
    ramBytes: value.ramBytes,
    decisionMs: value.decisionMs,
  }
}

export function verdictOn({ low, high }: PairedLoss, tolerance: number): SweepVerdict {
  if (high < tolerance) return 'enough'
  return low > 0 ? 'worse' : 'open'
}

/**
 * Takes with which the loss, if it and the share of takes that flip stay what they are, would be bounded
 * below the tolerance: z² · share that flips / (tolerance - loss)², and at least the z² / tolerance that
 * no flip at all needs. Null where the loss is not below the tolerance.
 */
function takesNeeded({ value, onlyFirst, onlySecond, n }: PairedLoss, tolerance: number) {
  if (!(value < tolerance)) return null
  const z2 = normalHalfWidth(0.95) ** 2
  const flips = (onlyFirst + onlySecond) / n
  return Math.ceil(Math.max(z2 / tolerance - z2 + 1, (z2 * flips) / (tolerance - value) ** 2))
}

function backgroundOf({ background, rateHz }: SensorValue): SettingResult['background'] {
  if (background.samples === 0) return null
  const hours = background.samples / rateHz / 3600
  const { low, high } = poissonPerHour(background.activations, hours)
  return { activations: background.activations, hours, low, high }
}
