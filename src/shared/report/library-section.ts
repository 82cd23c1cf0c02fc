import type { Recording } from '../model/library'
import { countLibrary, type GestureCounts } from '../present/library-counts'
import { wilson } from '../statistics/wilson'
import { MATCHER_WORDS } from '../words/en/matcher-words'
import { countOf, durationText, groupDigits, percent, percentRange } from '../words/en/numbers'
import { HAND_WORDS, SOURCE_WORDS } from '../words/en/recording-words'
import { REPORT_LIBRARY } from '../words/en/report-library'
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
    REPORT_LIBRARY.title,
    table(
      REPORT_LIBRARY.gesturesCaption,
      REPORT_LIBRARY.gestureHeads,
      counts.gestures.map((one) => gestureRow(data, one)),
    ),
    table(
      REPORT_LIBRARY.testersCaption,
      REPORT_LIBRARY.testerHeads,
      counts.testers.map((code) => testerRow(data, code)),
    ),
    facts([
      [REPORT_LIBRARY.background, backgroundText(recordings)],
      [REPORT_LIBRARY.comparedBy, MATCHER_WORDS[training.matcher ?? 'template'].name],
      [REPORT_LIBRARY.templates, training.templatesPerGesture],
      [REPORT_LIBRARY.points, training.length],
      [REPORT_LIBRARY.band, REPORT_LIBRARY.bandShare(training.bandShare)],
      [REPORT_LIBRARY.rollAligned, training.rollAlign ? REPORT_LIBRARY.yes : REPORT_LIBRARY.no],
      [REPORT_LIBRARY.cutBy, REPORT_LIBRARY.segmentation[training.segmentation]],
      [REPORT_LIBRARY.thresholdFactor, `× ${training.thresholdFactor.toFixed(2)}`],
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
    moving === null
      ? ribbon.kind === 'static'
        ? REPORT_LIBRARY.heldStill
        : '–'
      : REPORT_LIBRARY.extent(moving),
    moving === null ? '–' : durationText(moving.durationMs),
    model === undefined ? REPORT_LIBRARY.noModel : groupDigits(model.threshold),
    model === undefined ? '' : model.templates.length,
  ]
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
    REPORT_LIBRARY.ofGestures(gestures.size, library.gestures.length),
    list(own.map(({ hand }) => HAND_WORDS[hand])),
    list(own.map(({ source }) => SOURCE_WORDS[source])),
    known ? `${percent(rate.value)} (${countOf(rate)})` : REPORT_LIBRARY.notMeasured,
    known ? percentRange(rate.low, rate.high) : '',
  ]
}

function list(words: string[]): string {
  return [...new Set(words)].sort().join(', ')
}

function backgroundText(recordings: readonly Recording[]): string {
  const backgrounds = recordings.filter(({ kind }) => kind === 'background')
  if (backgrounds.length === 0) return REPORT_LIBRARY.none
  const ms = backgrounds.reduce((sum, { durationMs }) => sum + durationMs, 0)
  return REPORT_LIBRARY.backgroundIn(ms, backgrounds.length)
}
