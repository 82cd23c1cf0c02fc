import type { FullLibrary } from '../../../src/shared/model/library'
import type { ReportData } from '../../../src/shared/report/report-data'
import { event, evaluation as small } from '../present/present.fixture'
import { tinyLibrary } from '../training/tiny-library'

/** Names that try to be more than names. */
export const EVIL = {
  library: '</title><script>alert("library")</script>',
  gesture: '<img src=x onerror=alert(1)>',
  turned: 'Nod\u202e"><svg onload=alert(2)>',
  tester: '<b>T1</b>',
  target: "'-- <iframe src=//elsewhere.example>",
}

export function evilLibrary(): FullLibrary {
  const full = tinyLibrary()
  const [first, second, ...rest] = full.library.gestures
  return {
    library: {
      ...full.library,
      name: EVIL.library,
      gestures: [{ ...first, name: EVIL.gesture }, { ...second, name: EVIL.turned }, ...rest],
      target: { ...full.library.target, name: EVIL.target },
    },
    recordings: full.recordings.map((one) => ({
      ...one,
      recording: { ...one.recording, testerCode: EVIL.tester },
    })),
  }
}

/** A report without any measurement. */
export function bareReport(full: FullLibrary): ReportData {
  return {
    library: full.library,
    recordings: full.recordings.map(({ recording }) => recording),
    ribbons: new Map(),
    evaluation: null,
    grip: null,
    trained: null,
    trainingFailure: 'Too few takes to train on.',
    light: null,
    versions: { app: '1.2.3', commit: null, coreHash: 'c0', libraryHash: '11' },
    madeAt: '2026-11-25T12:00:00.000Z',
  }
}

/** The same with an evaluation whose names are evil too. */
export function evilReport(): ReportData {
  const full = evilLibrary()
  const value = small([
    [0, 0, 8],
    [0, 1, 2],
    [1, 1, 9],
    [1, null, 1],
    [2, 2, 10],
  ])
  value.gestures = full.library.gestures.map(({ id, name }) => ({ id, name }))
  value.scores.forEach((score, i) => {
    score.name = value.gestures[i].name
  })
  value.outcomes.forEach((outcome) => {
    outcome.testerCode = EVIL.tester
    outcome.event = event({})
  })
  value.folds = [
    {
      heldOut: EVIL.tester,
      trainTakes: 20,
      testTakes: 10,
      matcher: 'template',
      distancePerLog: null,
    },
  ]
  return {
    ...bareReport(full),
    evaluation: { value, at: '2026-11-25T11:00:00.000Z', stale: true },
  }
}
