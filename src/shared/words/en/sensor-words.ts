import { sensorAdvice } from '../../decide/sensor-advice'
import type {
  SensorDecision,
  SensorLimits,
  SettingResult,
  SweepAxis,
  SweepVerdict,
} from '../../decide/sensor-decision'
import { FEWEST_TESTERS } from '../../decide/tester-loss'
import {
  byteText,
  countOf,
  durationText,
  percent,
  percentRange,
  plural,
  shortNumber,
  UNIT_SPACE,
} from './numbers'
import { settingWords } from './setting-words'

export const SWEEP_TITLES: Record<SweepAxis, string> = {
  gyro: 'Without the gyroscope',
  rate: 'Output data rate',
  bits: 'Word width',
  noise: 'Noise density',
  range: 'Range of the accelerometer',
}

export const VERDICT_WORDS: Record<SweepVerdict, string> = {
  enough: 'enough',
  worse: 'worse',
  open: 'open',
}

/** What was changed, in a word or two. */
export function changeWords({ axis, setting }: SettingResult): string {
  switch (axis) {
    case 'gyro':
      return 'accelerometer alone'
    case 'rate':
      return `${setting.rateHz}${UNIT_SPACE}Hz`
    case 'bits':
      return `${setting.bits}${UNIT_SPACE}bit`
    case 'noise':
      return `${setting.accelNoise}${UNIT_SPACE}µg/√Hz, ${setting.gyroNoise}${UNIT_SPACE}mdeg/s/√Hz`
    case 'range':
      return `±${setting.rangeG}${UNIT_SPACE}g`
    case 'own':
      return 'as the target is'
    case 'together':
      return settingWords(setting)
  }
}

/** The one sentence on which sensor is enough. */
export function sensorSentence(decision: SensorDecision): string {
  const { own, cheapest, tolerance, results, together } = decision
  const points = pointsText(tolerance)
  const clips = sensorAdvice(decision).find(({ kind }) => kind === 'range-clips')
  const range = clips === undefined ? '' : `${clippedSentence(decision)} `
  const tried = `${plural('setting', results.length + together.length)} were tried; each way of saving ends at its first that is not enough.`
  if (cheapest.axis === 'own')
    return `${range}No cheaper sensor than ${settingWords(own.setting)} is found enough for a loss below ${points} on these ${plural('take', own.accuracy.n)}, ${judgedOver(decision)}. ${tried}`
  return `${range}${settingWords(cheapest.setting)} is enough: on the same ${plural('take', cheapest.loss.n)} it loses ${lossText(cheapest)}, the whole 95 % interval below ${points}, ${judgedOver(decision)}. ${tried}`
}

/** What intervals of a loss are taken over. */
function judgedOver({ testers }: SensorDecision): string {
  return testers.length < FEWEST_TESTERS
    ? 'over takes; testers may differ more'
    : `over ${plural('tester', testers.length)}`
}

/** How the settings are tried, before any is. */
export const SENSOR_ABOUT =
  'The takes at hand as other parts would have read them: lower rates, other ranges, coarser words, more noise, no gyroscope. Everything is learned again for each, with testers held out, or takes where there is one tester.'

/** What the losses rest on. */
export function sensorBasis(decision: SensorDecision): string {
  const { own, testers, holdout, tolerance } = decision
  const held = holdout === 'tester' ? 'testers held out' : 'takes held out'
  const interval =
    testers.length < FEWEST_TESTERS
      ? `Tango’s 95 % interval ${judgedOver(decision)}`
      : 'a 95 % interval, the wider of Tango’s over takes and Student’s t over testers'
  return `${plural('take', own.accuracy.n)} of ${plural('tester', testers.length)}, ${held}, the same for every setting. Bars: share of takes lost against the target as it is, with ${interval}; the dotted line is the accepted ${pointsText(tolerance)}. Enough: the whole interval lies below it; worse: it lies above 0; open: neither. Of settings that lose just what is accepted, about one in forty passes by luck: the more are tried, the likelier one does. Flash is counted with the code as measured; times are estimated.`
}

/** Points with their interval: '0.3 points (-0.8 to 1.6)'. */
export function lossText({ loss }: SettingResult): string {
  return `${points(loss.value)} points (${points(loss.low)} to ${points(loss.high)})`
}

export function pointsText(share: number): string {
  const text = points(share)
  return `${text} point${text === '1' ? '' : 's'}`
}

function points(share: number): string {
  return String(Number((share * 100).toFixed(1))).replace('-', '−')
}

/** What one setting costs, for a line under its bar. */
export function settingLine(
  result: SettingResult,
  { tolerance, testers }: Pick<SensorDecision, 'tolerance' | 'testers'>,
): string {
  const { accuracy, verdict, takesNeeded, loss, axis } = result
  const right = `${percent(accuracy.value)} right (${countOf(accuracy)}, ${percentRange(accuracy.low, accuracy.high)})`
  if (axis === 'own') return `${right}.`
  const base = `Loses ${lossText(result)}; ${right}.`
  if (verdict !== 'open' || takesNeeded === null || takesNeeded <= loss.n) return base
  const whose = testers.length < FEWEST_TESTERS ? '' : ' in all, the rest by further testers,'
  return `${base} About ${plural('take', takesNeeded)}${whose} would bound it below ${pointsText(tolerance)}.`
}

/** What else a setting costs: false activations, flash and time. */
export function costLine(result: SettingResult): string {
  const { background, flashBytes, decisionMs, axis } = result
  const hours = background === null ? '' : durationText(background.hours * 3_600_000)
  return [
    ...(axis === 'range' || axis === 'own' ? [clippedText(result)] : []),
    ...(background === null
      ? []
      : [
          `${background.activations} false in ${hours} (${shortNumber(background.low)} to ${shortNumber(background.high)} an hour)`,
        ]),
    `${byteText(flashBytes)} of flash`,
    `decision in ${shortNumber(decisionMs)}${UNIT_SPACE}ms, estimated`,
  ].join('; ')
}

/** Whether the gyroscope is needed. */
export function gyroSentence(decision: SensorDecision): string {
  const alone = decision.results.find(({ axis }) => axis === 'gyro')
  if (alone === undefined)
    return decision.limits.withoutGyro > 0
      ? `${plural('take', decision.limits.withoutGyro)} came without a gyroscope, so what it adds cannot be measured: record with a phone that has one.`
      : 'Not tried.'
  const [kind] = sensorAdvice(decision)
    .map((one) => one.kind)
    .filter((one) => one !== 'range-clips')
  if (kind === 'gyro-needed')
    return `The gyroscope is needed: the accelerometer alone loses ${lossText(alone)}.`
  if (kind === 'gyro-spare')
    return `The accelerometer alone is enough (loss ${lossText(alone)}); a gyroscope takes several times its current.`
  return `Whether the gyroscope is needed is open: the accelerometer alone loses ${lossText(alone)}.`
}

function clippedSentence({ own, results }: SensorDecision): string {
  const { clipped, setting } = own
  const wider = results.find(
    (one) => one.axis === 'range' && one.setting.rangeG > setting.rangeG && one.clipped.low < 0.01,
  )
  const mend =
    wider === undefined
      ? 'choose a wider one'
      : `±${wider.setting.rangeG}${UNIT_SPACE}g holds them (loss ${lossText(wider)})`
  return `±${setting.rangeG}${UNIT_SPACE}g clips ${percent(clipped.value)} of takes (${countOf(clipped)}, ${percentRange(clipped.low, clipped.high)}): ${mend}.`
}

/** Takes that a range clips. */
function clippedText({ clipped }: SettingResult): string {
  return clipped.hits === 0 ? `clips none of ${clipped.n} takes` : `clips ${countOf(clipped)} takes`
}

/** What these recordings cannot answer, each with what to record to answer it. */
export function limitSentences(limits: SensorLimits, decision: SensorDecision): string[] {
  const sentences: string[] = []
  const rate = shortNumber(limits.recordedHz)
  const content = shortNumber(Math.min(25, limits.contentHz))
  const untried =
    limits.untriedHz.length === 0
      ? ''
      : ` ${limits.untriedHz.map((hz) => `${hz}`).join(' and ')}${UNIT_SPACE}Hz were not tried.`
  const { rateHz } = decision.own.setting
  const beyond =
    rateHz > limits.recordedHz * 1.03
      ? ` The target’s own ${rateHz}${UNIT_SPACE}Hz are beyond that too: its figures are those of ${rate}${UNIT_SPACE}Hz.`
      : ''
  sentences.push(
    `The takes were recorded at ${rate}${UNIT_SPACE}Hz and hold nothing above about ${content}${UNIT_SPACE}Hz: what a faster board sees more is not in them.${untried}${beyond} Record with the board, or log its sensor, to know.`,
  )
  if (limits.phoneClipG !== null) {
    sentences.push(
      `The recording sensor itself seems to stop at ${shortNumber(limits.phoneClipG)}${UNIT_SPACE}g: wider ranges cannot be told apart. Record the hardest movements with the board.`,
    )
  } else {
    sentences.push(
      `The hardest take reaches ${shortNumber(limits.largestG)}${UNIT_SPACE}g: ranges above that differ in their step alone.`,
    )
  }
  if (limits.floorNoise !== null) {
    sentences.push(
      `Readings are rounded, which is noise of ${shortNumber(limits.floorNoise)}${UNIT_SPACE}µg/√Hz already: a quieter part is at least as good as measured, by how much cannot be said.`,
    )
  }
  if (decision.own.background === null)
    sentences.push(
      'There is no background, so false activations are not known: record some on Moves.',
    )
  return sentences
}
