import type { ComponentChildren } from 'preact'
import { SHELL } from '../../shared/words/en/shell'
import { Moves } from '../moves'
import { later } from './later'

// In the order in which a visitor is likely to need them: fetched ahead in this order.
const GestureScreen = later(
  SHELL.gesture,
  async () => (await import('../moves/gesture-screen')).GestureScreen,
)
const Try = later(SHELL.try, async () => (await import('../try')).Try)
const RecordScreen = later(SHELL.record, async () => (await import('../record')).RecordScreen)
const Proof = later(SHELL.proof, async () => (await import('../proof')).Proof)
const Prop = later(SHELL.prop, async () => (await import('../prop')).Prop)
const LibraryScreen = later(SHELL.libraries, async () => (await import('../library')).LibraryScreen)
const BackgroundScreen = later(
  SHELL.background,
  async () => (await import('../record/background-screen')).BackgroundScreen,
)
const Replay = later(SHELL.replay, async () => (await import('../replay')).Replay)
const Light = later(SHELL.light, async () => (await import('../light')).Light)
const ReportScreen = later(SHELL.report, async () => (await import('../report')).ReportScreen)
const GripScreen = later(SHELL.grip, async () => (await import('../proof/grip-screen')).GripScreen)
const DecidePlace = later(SHELL.decide, async () => (await import('../decide')).DecidePlace)
const CompareScreen = later(
  SHELL.modelsCompared,
  async () => (await import('../compare')).CompareScreen,
)
const BoardPlace = later(SHELL.boardCheck, async () => (await import('../board')).BoardPlace)
const BackupScreen = later(SHELL.backup, async () => (await import('../backup')).BackupScreen)
const ImportScreen = later(
  SHELL.importCsvLogs,
  async () => (await import('../library/import-screen')).ImportScreen,
)
const TeachScreen = later(SHELL.teach, async () => (await import('../teach')).TeachScreen)
const LicencesScreen = later(
  SHELL.licences,
  async () => (await import('../library/licences-screen')).LicencesScreen,
)
const Gallery = later(SHELL.gallery, async () => (await import('../gallery')).Gallery)
const StagePlace = later(SHELL.stage, async () => (await import('../stage')).StagePlace)
const CollectPlace = later(SHELL.collect, async () => (await import('../collect')).CollectPlace)
const TesterPlace = later(SHELL.session, async () => (await import('../session')).TesterPlace)

/** What the first part of the address shows; each place reads the rest itself. */
export const PLACES: Record<string, (rest: string[]) => ComponentChildren> = {
  moves: () => <Moves />,
  gesture: ([id = '']) => <GestureScreen key={id} id={id} />,
  record: ([gestureId = '']) => <RecordScreen key={gestureId} gestureId={gestureId} />,
  background: () => <BackgroundScreen />,
  library: () => <LibraryScreen />,
  collect: (rest) => <CollectPlace rest={rest} />,
  join: (rest) => <TesterPlace place="join" rest={rest} />,
  session: (rest) => <TesterPlace place="session" rest={rest} />,
  backup: () => <BackupScreen />,
  import: () => <ImportScreen />,
  licences: () => <LicencesScreen />,
  gallery: () => <Gallery />,
  replay: (rest) => <Replay rest={rest} />,
  teach: () => <TeachScreen />,
  stage: () => <StagePlace />,
  try: (rest) => <Try rest={rest} />,
  proof: (rest) => <Proof rest={rest} />,
  board: (rest) => <BoardPlace rest={rest} />,
  grip: () => <GripScreen />,
  compare: () => <CompareScreen />,
  decide: (rest) => <DecidePlace rest={rest} />,
  report: () => <ReportScreen />,
  light: (rest) => <Light rest={rest} />,
  prop: (rest) => <Prop rest={rest} />,
}
