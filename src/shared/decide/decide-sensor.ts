import type { Core } from '../core/core'
import { planFolds } from '../evaluation/folds'
import type { Holdout } from '../model/evaluation'
import type { FullLibrary } from '../model/library'
import { fail, ok, type Result } from '../model/result'
import type { RunParts } from '../parts/part-jobs'
import { partsHere } from '../parts/parts-here'
import type { OnProgress, Progress } from '../protocol/recogniser'
import { outlineLibrary } from '../training/prepare'
import { MEASURE_TROUBLE } from '../words/en/measure-trouble'
import type {
  SensorDecision,
  SensorLimits,
  SensorSetting,
  SettingResult,
  SweepAxis,
} from './sensor-decision'
import { answerableRates, sensorLimits } from './sensor-limits'
import type { SensorValue } from './sensor-part'
import { settingResult } from './setting-result'
import { FULL_BITS, ownSetting, rangesOf } from './settle'

export interface SensorOptions {
  /** Loss that is accepted, as a share of takes. */
  tolerance?: number
  /** Things to change; all of them by default. */
  axes?: readonly SweepAxis[]
  seed?: number
}

export const DEFAULT_TOLERANCE = 0.02

const BITS = [12, 10, 8]
/** Accelerometer µg/√Hz with gyroscope mdeg/s/√Hz: a good part, a usual one of old, a poor one. */
const NOISES = [
  [200, 10],
  [1000, 50],
  [4000, 200],
] as const

/** `decideSensorInParts` on this thread. */
export function decideSensor(
  core: Core,
  full: FullLibrary,
  onProgress: OnProgress = () => {},
  options: SensorOptions = {},
): Promise<Result<SensorDecision>> {
  return decideSensorInParts(partsHere(core), full, onProgress, options)
}

/**
 * Tries other sensors on the same takes: each thing changed alone, then step by step together towards
 * the cheapest. The order is fixed beforehand (no gyroscope, then lower rates, coarser words, more
 * noise), and no way is followed beyond the first setting that is not enough: among many tried, a later
 * one would be so by luck.
 * Codes: 'decide/one-gesture', those of planFolds, trainPrepared and of whoever runs the parts.
 */
export async function decideSensorInParts(
  run: RunParts,
  full: FullLibrary,
  onProgress: OnProgress = () => {},
  { tolerance = DEFAULT_TOLERANCE, axes, seed = 1 }: SensorOptions = {},
): Promise<Result<SensorDecision>> {
  const outline = outlineLibrary(full)
  if (new Set(outline.takes.map(({ gesture }) => gesture)).size < 2) {
    return fail('decide/one-gesture', MEASURE_TROUBLE.nothingToConfuse)
  }
  const testers = [...new Set(outline.takes.map(({ take }) => take.testerCode))].sort()
  const holdout: Holdout = testers.length > 1 ? 'tester' : 'take'
  const plan = planFolds(outline, holdout, 1)
  if (!plan.ok) return plan
  const limits = sensorLimits(full)
  const sweep = new Sweep(run, full, holdout, tolerance, seed, onProgress)
  const done = await sweep.alone(limits, axes)
  if (!done.ok) return done
  const cheapest = await sweep.descend(done.value, axes)
  if (!cheapest.ok) return cheapest
  const { own, results } = done.value
  return ok({
    holdout,
    tolerance,
    testers,
    own,
    results,
    together: sweep.together,
    limits,
    ...cheapest.value,
  })
}

interface Alone {
  own: SettingResult
  results: SettingResult[]
}

class Sweep {
  readonly together: SettingResult[] = []
  readonly #run: RunParts
  readonly #full: FullLibrary
  readonly #holdout: Holdout
  readonly #tolerance: number
  readonly #seed: number
  readonly #onProgress: OnProgress
  #own: SensorValue | null = null
  #done = 0

  constructor(
    run: RunParts,
    full: FullLibrary,
    holdout: Holdout,
    tolerance: number,
    seed: number,
    onProgress: OnProgress,
  ) {
    this.#run = run
    this.#full = full
    this.#holdout = holdout
    this.#tolerance = tolerance
    this.#seed = seed
    this.#onProgress = onProgress
  }

  /** Every setting with one thing changed. */
  async alone(limits: SensorLimits, axes?: readonly SweepAxis[]): Promise<Result<Alone>> {
    const settings = settingsAlone(this.#full, limits).filter(
      ({ axis }) => axes === undefined || axes.includes(axis),
    )
    const own = ownSetting(this.#full.library.target)
    const values = await this.#measure([own, ...settings.map(({ setting }) => setting)])
    if (!values.ok) return values
    const [first, ...rest] = values.value
    this.#own = first!
    return ok({
      own: this.#result(own, 'own', first!),
      results: rest.map((value, i) => this.#result(settings[i]!.setting, settings[i]!.axis, value)),
    })
  }

  /**
   * Down from the target's own setting, one step at a time. Each way of saving is a fixed sequence: it
   * ends with the first step whose loss is not bounded, alone or together with what was saved before.
   */
  async descend(
    { own, results }: Alone,
    axes: readonly SweepAxis[] = ['gyro', 'rate', 'bits', 'noise'],
  ): Promise<Result<{ cheapest: SettingResult }>> {
    let cheapest = own
    for (const axis of ['gyro', 'rate', 'bits', 'noise'] as const) {
      if (!axes.includes(axis)) continue
      const steps = results.filter((one) => one.axis === axis && isCheaper(one, own))
      for (const step of downwards(steps, axis)) {
        if (step.verdict !== 'enough') break
        const tried = await this.#combine(cheapest, step, axis, own)
        if (!tried.ok) return tried
        if (tried.value.verdict !== 'enough') break
        cheapest = tried.value
      }
    }
    return ok({ cheapest })
  }

  async #combine(
    base: SettingResult,
    step: SettingResult,
    axis: SweepAxis,
    own: SettingResult,
  ): Promise<Result<SettingResult>> {
    const setting = changed(base.setting, step.setting, axis)
    if (isSame(changed(own.setting, step.setting, axis), setting)) return ok(step)
    const values = await this.#measure([setting])
    if (!values.ok) return values
    const result = this.#result(setting, 'together', values.value[0]!)
    this.together.push(result)
    return ok(result)
  }

  async #measure(settings: readonly SensorSetting[]): Promise<Result<SensorValue[]>> {
    const before = this.#done
    const tell = ({ done, total, what }: Progress) =>
      this.#onProgress({
        done: before + done,
        total: before + Math.max(total, settings.length),
        what,
      })
    const shared = { full: this.#full, holdout: this.#holdout, seed: this.#seed }
    const values = await this.#run('sensor', shared, settings, tell)
    this.#done += settings.length
    return values
  }

  #result(setting: SensorSetting, axis: SettingResult['axis'], value: SensorValue): SettingResult {
    return settingResult(setting, axis, value, this.#own!, this.#tolerance)
  }
}

function settingsAlone(
  full: FullLibrary,
  limits: SensorLimits,
): { axis: SweepAxis; setting: SensorSetting }[] {
  const { target } = full.library
  const own = ownSetting(target)
  const gyro = limits.withoutGyro === 0 ? [{ ...own, gyro: false }] : []
  const rates = answerableRates(full, limits).filter((rateHz) => rateHz !== target.rateHz)
  const ranges = rangesOf(target).filter(({ fullScale }) => fullScale !== target.accel.fullScale)
  const by = (axis: SweepAxis, settings: SensorSetting[]) =>
    settings.map((setting) => ({ axis, setting }))
  return [
    ...by('gyro', gyro),
    ...by(
      'rate',
      rates.map((rateHz) => ({ ...own, rateHz })),
    ),
    ...by(
      'bits',
      BITS.filter((bits) => bits < FULL_BITS).map((bits) => ({ ...own, bits })),
    ),
    ...by(
      'noise',
      NOISES.map(([accelNoise, gyroNoise]) => ({ ...own, accelNoise, gyroNoise })),
    ),
    ...by(
      'range',
      ranges.map(({ fullScale }) => ({ ...own, rangeG: fullScale })),
    ),
  ]
}

function isCheaper({ setting, axis }: SettingResult, own: SettingResult): boolean {
  return axis !== 'rate' || setting.rateHz < own.setting.rateHz
}

/** From the least to the greatest saving. */
function downwards(steps: SettingResult[], axis: SweepAxis): SettingResult[] {
  const cost = ({ setting }: SettingResult) =>
    axis === 'rate' ? setting.rateHz : axis === 'bits' ? setting.bits : -setting.accelNoise
  return [...steps].sort((a, b) => cost(b) - cost(a))
}

function changed(base: SensorSetting, step: SensorSetting, axis: SweepAxis): SensorSetting {
  if (axis === 'gyro') return { ...base, gyro: step.gyro }
  if (axis === 'rate') return { ...base, rateHz: step.rateHz }
  if (axis === 'bits') return { ...base, bits: step.bits }
  if (axis === 'range') return { ...base, rangeG: step.rangeG }
  return { ...base, accelNoise: step.accelNoise, gyroNoise: step.gyroNoise }
}

function isSame(a: SensorSetting, b: SensorSetting): boolean {
  return JSON.stringify(a) === JSON.stringify(b)
}
