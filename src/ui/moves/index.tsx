import './moves.css'
import { useState } from 'preact/hooks'
import type { Library } from '../../shared/model/library'
import { countLibrary, type LibraryCounts } from '../../shared/present/library-counts'
import { nextStep } from '../../shared/present/next-step'
import { MOVES } from '../../shared/words/en/moves'
import { Button, Icon, Mark, Screen, useApp } from '../common'
import { Unfinished } from '../record/unfinished'
import { AddGesture } from './add-gesture'
import { BackgroundCard } from './background-card'
import { EmptyStart } from './empty-start'
import { FootStep } from './foot-step'
import { GestureCard } from './gesture-card'
import { SessionsHere } from './sessions-here'

/** The library as cards: what is there, and what to do next. */
export function Moves() {
  const library = useApp().library.current.value
  return library === null ? <EmptyStart /> : <LibraryCards library={library} />
}

function LibraryCards({ library }: { library: Library }) {
  const app = useApp()
  const [adding, setAdding] = useState(false)
  const counts = countLibrary(library.gestures, app.library.recordings.value)
  const evaluation = app.evaluation.value
  const fresh = evaluation.state === 'done' && !evaluation.stale ? evaluation.value : null
  const step = nextStep(counts, fresh, app.unsaved.value)
  return (
    <Screen
      title={library.name}
      aside={
        <Button tone="quiet" href="#/library" label={MOVES.toLibraries}>
          <Icon name="shelf" />
        </Button>
      }
      foot={adding ? undefined : <FootStep step={step} onAdd={() => setAdding(true)} />}
    >
      <Summary library={library} counts={counts} />
      <Unfinished />
      <SessionsHere />
      <div class="moves-grid">
        {counts.gestures.map((one) => (
          <GestureCard key={one.gesture.id} counts={one} />
        ))}
        {counts.gestures.length > 0 && (
          <BackgroundCard count={counts.backgrounds.length} totalMs={counts.backgroundMs} />
        )}
      </div>
      <AddGesture open={adding} onOpen={setAdding} />
      {counts.gestures.length > 0 && !adding && (
        <Button wide href="#/collect">
          {MOVES.toCollect}
        </Button>
      )}
    </Screen>
  )
}

function Summary({ library, counts }: { library: Library; counts: LibraryCounts }) {
  return (
    <p class="moves-summary">
      <span>{MOVES.gestures(counts.gestures.length)}</span>
      <span>{MOVES.takes(counts.takes)}</span>
      <span>{MOVES.testers(counts.testers.length)}</span>
      {library.generated && <Mark kind="generated" />}
    </p>
  )
}
