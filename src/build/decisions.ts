import type { Core } from '../shared/core/core'
import type { DataDecision } from '../shared/decide/data-decision'
import { decideData } from '../shared/decide/decide-data'
import { decideGestures } from '../shared/decide/decide-gestures'
import { decideSensor } from '../shared/decide/decide-sensor'
import type { GestureDecision } from '../shared/decide/gesture-decision'
import type { SensorDecision } from '../shared/decide/sensor-decision'
import type { FullLibrary } from '../shared/model/library'
import type { Result } from '../shared/model/result'
import { pairsInOrder } from '../shared/present/pairs-in-order'
import type { OnProgress } from '../shared/protocol/recogniser'
import { dataSentence, nextSentence } from '../shared/words/en/data-words'
import { adviceText, gesturesSentence } from '../shared/words/en/pair-words'
import {
  changeWords,
  gyroSentence,
  limitSentences,
  sensorSentence,
  settingLine,
} from '../shared/words/en/sensor-words'
import { setSentence } from '../shared/words/en/subset-words'

/** What could not be decided, and what to record to decide it. */
export interface Undecided {
  undecided: string
}

/** The three decisions of the app's Decide, as `npm run evaluate -- PATH --decide --json` prints them. */
export interface Decisions {
  gestures: GestureDecision | Undecided
  data: DataDecision | Undecided
  sensor: SensorDecision | Undecided
}

export async function decideAll(
  core: Core,
  full: FullLibrary,
  tolerance: number,
  tell: OnProgress,
): Promise<Decisions> {
  return {
    gestures: answered(await decideGestures(core, full, tell)),
    data: answered(await decideData(core, full, tell)),
    sensor: answered(await decideSensor(core, full, tell, { tolerance })),
  }
}

function answered<T>(result: Result<T>): T | Undecided {
  return result.ok ? result.value : { undecided: result.message }
}

/** The same as sentences, for a terminal. */
export function decisionText({ gestures, data, sensor }: Decisions): string {
  return [
    'Which gestures',
    ...('undecided' in gestures ? [gestures.undecided] : gestureLines(gestures)),
    '',
    'How much data',
    ...('undecided' in data ? [data.undecided] : dataLines(data)),
    '',
    'Which sensor is enough',
    ...('undecided' in sensor ? [sensor.undecided] : sensorLines(sensor)),
  ].join('\n')
}

function gestureLines(decision: GestureDecision): string[] {
  const advised = pairsInOrder(decision).filter(({ advice }) => advice !== null)
  return [
    gesturesSentence(decision),
    ...advised.map((pair) => `- ${adviceText(decision, pair)}`),
    ...decision.subsets.map((set) => `- ${setSentence(decision, set)}`),
  ]
}

function dataLines(decision: DataDecision): string[] {
  return [
    dataSentence(decision),
    ...decision.next.slice(1).map((kind) => `- ${nextSentence(decision, kind)}`),
  ]
}

function sensorLines(decision: SensorDecision): string[] {
  const tried = [...decision.results, ...decision.together]
  return [
    sensorSentence(decision),
    gyroSentence(decision),
    ...tried.map((one) => `- ${changeWords(one)}: ${settingLine(one, decision)}`),
    ...limitSentences(decision.limits, decision).map((sentence) => `- ${sentence}`),
  ]
}
