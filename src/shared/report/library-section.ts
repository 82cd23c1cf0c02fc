import type { Recording } from '../model/library'
import { countLibrary, type GestureCounts } from '../present/library-counts'
import { wilson } from '../statistics/wilson'
import { MATCHER_WORDS } from '../words/en/matcher-words'
import {
  countOf,
  durationText,
  groupDigits,
  percent,
  percentRange,
  plural,
} from '../words/en/numbers'
import { facts, type Html, name, section, table } from './html'
import { inlinePlot } from './plots/plot'
import { ribbonPlot } from './plots/ribbon-plot'
import type { ReportData } from './report-data'

const RIBBON_PX = 44

/** Gestures with their pictures, who performed them, and how the model is to be trained. */
export function librarySection(data: ReportData): Html {
  const { library, recordings } = data
  const counts = countLibrary(library.gestures, recordings)
  const { training } = library
  return section(
    'Library',
    table(
      'Gestures. Ribbon: the path of the prop’s tip, wide where it is fast. Threshold: a movement farther than this from a gesture is rejected; of the model of all takes.',
      ['Gesture', 'ribbon', 'takes', 'testers', 'extent', 'length', 'threshold', 'templates'],
      counts.gestures.map((one) => gestureRow(data, one)),
    ),
    table(
      'Testers, by code. Understood: of their takes while they were held out.',
      ['Tester', 'takes', 'gestures', 'hand', 'source', 'understood', '95 % interval'],
      counts.testers.map((code) => testerRow(data, code)),
    ),
    facts([
      ['Background', backgroundText(recordings)],
      ['Compared by', MATCHER_WORDS[training.matcher ?? 'template'].name],
      ['Templates a gesture, at most', training.templatesPerGesture],
      ['Points of a segment', training.length],
      ['Warping band', `± ${Math.round(training.bandShare * 100)} % of the segment`],
      ['Roll aligned by gravity', training.rollAlign ? 'yes' : 'no'],
      ['Cut by', training.segmentation === 'button' ? 'a button' : 'motion'],
      ['Threshold factor', `× ${training.thresholdFactor.toFixed(2)}`],
    ]),
  )
}

function gestureRow({ ribbons, trained }: ReportData, { gesture, takes, testers }: GestureCounts) {
  const ribbon = ribbons.get(gesture.id) ?? { kind: 'none' as const }
  const model = trained?.model.gestures.find(({ id }) => id === gesture.id)
  const moving = ribbon.kind === 'path' ? ribbon : null
  return [
    name(gesture.name),
    inlinePlot(ribbonPlot(gesture.id, gesture.name, ribbon, RIBBON_PX)),
    takes.length,
    testers.length,
    moving === null ? (ribbon.kind === 'static' ? 'held still' : '–') : extentText(moving),
    moving === null ? '–' : durationText(moving.durationMs),
    model === undefined ? 'no model' : groupDigits(model.threshold),
    model === undefined ? '' : model.templates.length,
  ]
}

function extentText({ extentCm, extentDeg }: { extentCm: number; extentDeg: number }): string {
  return `${Math.round(extentCm)} cm, ${Math.round(extentDeg)}°`
}

function testerRow({ recordings, evaluation, library }: ReportData, code: string) {
  const own = recordings.filter((one) => one.kind === 'take' && one.testerCode === code)
  const gestures = new Set(own.map((one) => (one.kind === 'take' ? one.gestureId : '')))
  const outcomes = evaluation?.value.outcomes.filter(({ testerCode }) => testerCode === code) ?? []
  const right = outcomes.filter(({ truth, answer }) => truth === answer).length
  const rate = wilson(right, outcomes.length)
  const known = outcomes.length > 0
  return [
    name(code),
    own.length,
    `${gestures.size} of ${library.gestures.length}`,
    list(own.map(({ hand }) => hand)),
    list(own.map(({ source }) => source)),
    known ? `${percent(rate.value)} (${countOf(rate)})` : 'not measured',
    known ? percentRange(rate.low, rate.high) : '',
  ]
}

function list(words: string[]): string {
  return [...new Set(words)].sort().join(', ')
}

function backgroundText(recordings: readonly Recording[]): string {
  const backgrounds = recordings.filter(({ kind }) => kind === 'background')
  if (backgrounds.length === 0) return 'none'
  const ms = backgrounds.reduce((sum, { durationMs }) => sum + durationMs, 0)
  return `${durationText(ms)} in ${plural('recording', backgrounds.length)}`
}
