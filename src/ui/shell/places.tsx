import type { ComponentChildren } from 'preact'
import { LibraryScreen } from '../library'
import { GestureScreen, Moves } from '../moves'
import { Proof } from '../proof'
import { GripScreen } from '../proof/grip-screen'
import { Prop } from '../prop'
import { BackgroundScreen, RecordScreen } from '../record'
import { Try } from '../try'
import { later } from './later'

const BoardScreen = later('Board check', async () => (await import('../board')).BoardScreen)
const ImportScreen = later(
  'Import CSV logs',
  async () => (await import('../library/import-screen')).ImportScreen,
)
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
  board: () => <BoardScreen />,
  grip: () => <GripScreen />,
  prop: (rest) => <Prop rest={rest} />,
}
