import type { ComponentChildren } from 'preact'
import { LibraryScreen } from '../library'
import { GestureScreen, Moves } from '../moves'
import { Proof } from '../proof'
import { Prop } from '../prop'
import { BackgroundScreen, RecordScreen } from '../record'
import { Try } from '../try'
import { later } from './later'

const BoardPlace = later('Board check', async () => (await import('../board')).BoardPlace)
const GripScreen = later('Grip', async () => (await import('../proof/grip-screen')).GripScreen)
const ImportScreen = later(
  'Import CSV logs',
  async () => (await import('../library/import-screen')).ImportScreen,
)
const Light = later('Light', async () => (await import('../light')).Light)
const Replay = later('Replay', async () => (await import('../replay')).Replay)

/** What the first part of the address shows; each place reads the rest itself. */
export const PLACES: Record<string, (rest: string[]) => ComponentChildren> = {
  moves: () => <Moves />,
  gesture: ([id = '']) => <GestureScreen key={id} id={id} />,
  record: ([gestureId = '']) => <RecordScreen key={gestureId} gestureId={gestureId} />,
  background: () => <BackgroundScreen />,
  library: () => <LibraryScreen />,
  import: () => <ImportScreen />,
  replay: (rest) => <Replay rest={rest} />,
  try: (rest) => <Try rest={rest} />,
  proof: (rest) => <Proof rest={rest} />,
  board: (rest) => <BoardPlace rest={rest} />,
  grip: () => <GripScreen />,
  light: (rest) => <Light rest={rest} />,
  prop: (rest) => <Prop rest={rest} />,
}
