import { expect, test } from 'vitest'
import { decideSensorInParts } from '../../../src/shared/decide/decide-sensor'
import type { SensorSetting } from '../../../src/shared/decide/sensor-decision'
import type { SensorValue } from '../../../src/shared/decide/sensor-part'
import type { RunParts } from '../../../src/shared/parts/part-jobs'
import { sensorSentence } from '../../../src/shared/words/en/sensor-words'
import { tinyLibrary } from '../training/tiny-library'

/** Answers of three testers, 200 takes each: 12 wrong at the end, or in doubt 15 others at the start. */
function answered(inDoubt: boolean): SensorValue {
  return {
    answers: Array.from({ length: 600 }, (_, i) => ({
      takeId: `${i}`,
      tester: `T${i % 3}`,
      right: inDoubt ? i >= 15 : i < 588,
    })),
    background: { samples: 0, activations: 0, segments: 0, acceptedFrom: [] },
    rateHz: 52,
    clipped: [],
    flashBytes: 1,
    ramBytes: 1,
    decisionMs: 1,
  }
}

/** Runs no recogniser: what each setting answers is laid down, as luck cannot be arranged with takes. */
function laidDown(inDoubt: (setting: SensorSetting) => boolean): RunParts {
  const run = async (_name: string, _shared: unknown, parts: readonly unknown[]) => ({
    ok: true,
    value: parts.map((setting) => answered(inDoubt(setting as SensorSetting))),
  })
  return run as unknown as RunParts
}

async function decided(inDoubt: (setting: SensorSetting) => boolean) {
  const decision = await decideSensorInParts(laidDown(inDoubt), tinyLibrary(), undefined, {
    axes: ['rate', 'bits'],
  })
  if (!decision.ok) throw new Error(decision.message)
  return decision.value
}

test('a way of saving ends at its first step that is not enough, whatever luck a later one has', async () => {
  // 26 Hz loses 15 of 600 takes and wins 12: 0.5 points, not bounded below 2; 12.5 Hz seems to lose none.
  const { results, cheapest } = await decided(({ rateHz }) => rateHz === 26)
  const verdicts = results
    .filter(({ axis }) => axis === 'rate')
    .map(({ setting, verdict }) => [setting.rateHz, verdict])
  expect(verdicts).toEqual([
    [12.5, 'enough'],
    [26, 'open'],
  ])
  expect(cheapest.setting).toMatchObject({ rateHz: 52, bits: 8 })
})

test('it ends too where a step is not enough together with what was saved before', async () => {
  const { cheapest, together } = await decided(({ rateHz, bits }) => rateHz === 12.5 && bits === 12)
  expect(together.map(({ setting }) => setting.bits)).toEqual([12])
  expect(cheapest.setting).toMatchObject({ rateHz: 12.5, bits: 16 })
})

test('the sentence says how many settings were tried, and over how many testers it is judged', async () => {
  const decision = await decided(() => false)
  expect(decision.results.length + decision.together.length).toBe(8)
  const sentence = sensorSentence(decision)
  expect(sentence).toContain('8 settings were tried')
  expect(sentence).toContain('over 3 testers')
  const lucky = await decided(({ rateHz, bits }) => rateHz === 26 || bits === 12)
  expect(lucky.results.map(({ verdict }) => verdict)).toContain('enough')
  expect(lucky.cheapest.axis).toBe('own')
  expect(sensorSentence(lucky)).toContain('is found enough')
  expect(sensorSentence(lucky)).toContain('5 settings were tried; each way of saving ends at')
  expect(sensorSentence({ ...decision, testers: ['T0'] })).toContain(
    'over takes; testers may differ more',
  )
})
