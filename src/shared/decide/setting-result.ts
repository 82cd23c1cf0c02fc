import { rateByTester } from '../statistics/clustered'
import { mcnemarExact } from '../statistics/mcnemar'
import { type PairedLoss, pairedLoss } from '../statistics/paired'
import { poissonPerHour } from '../statistics/poisson'
import { normalHalfWidth } from '../statistics/wilson'
import type { SensorSetting, SettingResult, SweepVerdict } from './sensor-decision'
import type { SensorValue } from './sensor-part'
import { errorOverTesters, lossOverTesters, type TesterFlips } from './tester-loss'

/** What a setting costs against the target's own, on the same takes. */
export function settingResult(
  setting: SensorSetting,
  axis: SettingResult['axis'],
  value: SensorValue,
  own: SensorValue,
  tolerance: number,
): SettingResult {
  const before = new Map(own.answers.map(({ takeId, right }) => [takeId, right]))
  const flips = new Map<string, TesterFlips>()
  for (const { takeId, tester, right } of value.answers) {
    const { lost, won, n } = flips.get(tester) ?? { lost: 0, won: 0, n: 0 }
    const was = before.get(takeId)
    flips.set(tester, {
      lost: lost + (!right && was === true ? 1 : 0),
      won: won + (right && was === false ? 1 : 0),
      n: n + 1,
    })
  }
  const testers = [...flips.values()]
  const onlyOwn = testers.reduce((sum, { lost }) => sum + lost, 0)
  const onlyThis = testers.reduce((sum, { won }) => sum + won, 0)
  const loss = lossOverTesters(pairedLoss(onlyOwn, onlyThis, value.answers.length), testers)
  const verdict = verdictOn(loss, tolerance)
  return {
    setting,
    axis,
    accuracy: rateByTester(value.answers.map(({ tester, right }) => ({ tester, hit: right }))),
    loss,
    mcnemar: mcnemarExact(onlyOwn, onlyThis),
    verdict,
    takesNeeded: verdict === 'open' ? takesNeeded(loss, testers, tolerance) : null,
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
 * no flip at all needs. Where testers disagree by more than that, as many as further testers would
 * bring until their error is as small. Null where the loss is not below the tolerance.
 */
function takesNeeded(
  { value, onlyFirst, onlySecond, n }: PairedLoss,
  testers: readonly TesterFlips[],
  tolerance: number,
): number | null {
  if (!(value < tolerance)) return null
  const z2 = normalHalfWidth(0.95) ** 2
  const flips = (onlyFirst + onlySecond) / n
  const spread = Math.max(flips, n * (errorOverTesters(testers) ?? 0) ** 2)
  return Math.ceil(Math.max(z2 / tolerance - z2 + 1, (z2 * spread) / (tolerance - value) ** 2))
}

function backgroundOf({ background, rateHz }: SensorValue): SettingResult['background'] {
  if (background.samples === 0) return null
  const hours = background.samples / rateHz / 3600
  const { low, high } = poissonPerHour(background.activations, hours)
  return { activations: background.activations, hours, low, high }
}
