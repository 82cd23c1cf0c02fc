import type { ComponentChildren } from 'preact'
import { Moves } from '../moves'
import { later } from './later'

// In the order in which a visitor is likely to need them: fetched ahead in this order.
const GestureScreen = later(
  'Gesture',
  async () => (await import('../moves/gesture-screen')).GestureScreen,
)
const Try = later('Try', async () => (await import('../try')).Try)
const RecordScreen = later('Record', async () => (await import('../record')).RecordScreen)
const Proof = later('Proof', async () => (await import('../proof')).Proof)
const Prop = later('Prop', async () => (await import('../prop')).Prop)
const LibraryScreen = later('Libraries', async () => (await import('../library')).LibraryScreen)
const BackgroundScreen = later(
  'Background',
  async () => (await import('../record/background-screen')).BackgroundScreen,
)
const Replay = later('Replay', async () => (await import('../replay')).Replay)
const Light = later('Light', async () => (await import('../light')).Light)
const ReportScreen = later('Report', async () => (await import('../report')).ReportScreen)
const GripScreen = later('Grip', async () => (await import('../proof/grip-screen')).GripScreen)
const DecidePlace = later('Decide', async () => (await import('../decide')).DecidePlace)
const CompareScreen = later(
  'Models compared',
  async () => (await import('../compare')).CompareScreen,
)
const BoardPlace = later('Board check', async () => (await import('../board')).BoardPlace)
const BackupScreen = later('Backup', async () => (await import('../backup')).BackupScreen)
const ImportScreen = later(
  'Import CSV logs',
  async () => (await import('../library/import-screen')).ImportScreen,
)
const TeachScreen = later('Teach', async () => (await import('../teach')).TeachScreen)
const LicencesScreen = later(
  'Licences',
  async () => (await import('../library/licences-screen')).LicencesScreen,
)
const Gallery = later('Gallery', async () => (await import('../gallery')).Gallery)
const StagePlace = later('Stage', async () => (await import('../stage')).StagePlace)
const CollectPlace = later('Collect', async () => (await import('../collect')).CollectPlace)
const TesterPlace = later('Session', async () => (await import('../session')).TesterPlace)

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
