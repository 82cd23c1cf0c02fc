import { budgetOf } from '../budget/budget'
import { partOfTarget } from '../budget/parts'
import { INT16_MAX, INT16_MIN } from '../conditioning/counts'
import type { Core } from '../core/core'
import { addBackground, type BackgroundCount, NO_BACKGROUND } from '../evaluation/background-score'
import { planFolds } from '../evaluation/folds'
import type { Holdout } from '../model/evaluation'
import type { FullLibrary } from '../model/library'
import { ok, type Result } from '../model/result'
import { AXES } from '../model/sample'
import type { PartJob } from '../parts/parts'
import type { OnProgress } from '../protocol/recogniser'
import type { PreparedTake } from '../training/prepare'
import { WORK_PROGRESS } from '../words/en/progress-work'
import { settingWords } from '../words/en/setting-words'
import { measureFold, type TakeAnswer } from './measure-fold'
import type { SensorSetting } from './sensor-decision'
import { settle } from './settle'
import { accelerometerModel } from './without-gyro'

export interface SensorShared {
  full: FullLibrary
  holdout: Holdout
  /** Of the noise. */
  seed: number
}

export interface SensorValue {
  /** By the order of takes in the rounds. */
  answers: Pick<TakeAnswer, 'takeId' | 'tester' | 'right'>[]
  background: BackgroundCount
  rateHz: number
  clipped: { tester: string; clipped: boolean }[]
  flashBytes: number
  ramBytes: number
  decisionMs: number
}

/** Clipped values of the accelerometer in a take that are no single stray one. */
const CLIPPED_VALUES = 2

/** The whole evaluation, testers held out, of one setting. */
export const sensorPart: PartJob<SensorShared, SensorSetting, SensorValue> = {
  open: (core, shared) =>
    ok((setting, onProgress) => measureSetting(core, shared, setting, onProgress)),
}

function measureSetting(
  core: Core,
  { full, holdout, seed }: SensorShared,
  setting: SensorSetting,
  onProgress: OnProgress,
): Result<SensorValue> {
  const prepared = settle(full, setting, seed)
  const plan = planFolds(prepared, holdout, 1)
  if (!plan.ok) return plan
  const { folds } = plan.value
  const part = partOfTarget(full.library.target)
  const value: SensorValue = {
    answers: [],
    background: NO_BACKGROUND,
    rateHz: prepared.target.rateHz,
    clipped: prepared.takes.map((take) => ({
      tester: take.take.testerCode,
      clipped: clippedValues(take) >= CLIPPED_VALUES,
    })),
    flashBytes: 0,
    ramBytes: 0,
    decisionMs: 0,
  }
  for (const [index, fold] of folds.entries()) {
    onProgress({
      done: index,
      total: folds.length,
      what: WORK_PROGRESS.trying(settingWords(setting)),
    })
    const measured = measureFold(core, fold)
    if (!measured.ok) return measured
    const { answers, background, trained } = measured.value
    value.answers.push(...answers.map(({ takeId, tester, right }) => ({ takeId, tester, right })))
    value.background = addBackground(value.background, background)
    const model = setting.gyro ? trained.model : accelerometerModel(trained.model)
    const budget = budgetOf(model, part)
    value.flashBytes = Math.max(value.flashBytes, budget.flash.value)
    value.ramBytes = Math.max(value.ramBytes, budget.ram.value)
    value.decisionMs = Math.max(value.decisionMs, budget.decisionMs.value)
  }
  return ok(value)
}

function clippedValues({ counts, from, to }: PreparedTake): number {
  let clipped = 0
  for (let i = from; i < to; i++) {
    for (let axis = 0; axis < 3; axis++) {
      const value = counts[i * AXES + axis]!
      if (value === INT16_MAX || value === INT16_MIN) clipped++
    }
  }
  return clipped
}
