import { useState } from 'preact/hooks'
import type { GestureCounts } from '../../shared/present/library-counts'
import { countLibrary } from '../../shared/present/library-counts'
import { GESTURE } from '../../shared/words/en/gesture'
import { durationText } from '../../shared/words/en/numbers'
import { Button, Figure, goBack, HOME, Icon, Mark, route, Screen, Section, useApp } from '../common'
import { GestureRibbon } from '../ribbon'
import { Missing } from './missing'
import { RenameGesture } from './rename-gesture'
import { TakeList } from './take-list'

/** One gesture: its picture, who performed it, and every take. */
export function GestureScreen({ id }: { id: string }) {
  const app = useApp()
  const library = app.library.current.value
  const counts = countLibrary(library?.gestures ?? [], app.library.recordings.value)
  const found = counts.gestures.find((one) => one.gesture.id === id)
  return found === undefined ? <Missing what="gesture" /> : <OneGesture counts={found} />
}

function OneGesture({ counts }: { counts: GestureCounts }) {
  const app = useApp()
  const [renaming, setRenaming] = useState(false)
  const { gesture, takes } = counts
  const madeCount = takes.filter((take) => take.source === 'generated').length
  const remove = () => {
    goBack(HOME)
    void app.library.removeGesture(gesture.id)
  }
  return (
    <Screen
      title={gesture.name}
      back={HOME}
      aside={
        <>
          <Button
            tone="quiet"
            label={GESTURE.renameGesture(gesture.name)}
            onClick={() => setRenaming(true)}
          >
            <Icon name="pen" />
          </Button>
          <Button tone="quiet" label={GESTURE.deleteGesture(gesture.name)} onClick={remove}>
            <Icon name="bin" />
          </Button>
        </>
      }
      foot={
        <Button tone="amber" big wide href={route('record', gesture.id)}>
          <Icon name="record" /> {GESTURE.recordTakes}
        </Button>
      }
    >
      {renaming && <RenameGesture gesture={gesture} onDone={() => setRenaming(false)} />}
      <div class="gesture-head">
        <div class="gesture-picture">
          <GestureRibbon gestureId={gesture.id} size={168} />
        </div>
        <div class="figures">
          <Figure
            label={GESTURE.takes}
            value={takes.length}
            note={madeCount > 0 && <Mark kind="generated" count={madeCount} />}
          />
          <Figure
            label={GESTURE.medianLength}
            value={medianLength(counts)}
            note={`n = ${takes.length}`}
          />
        </div>
      </div>
      <Button wide href={route('light', gesture.id)}>
        {GESTURE.toLight}
      </Button>
      {takes.length > 0 && (
        <Section title={GESTURE.testerCount(counts.testers.length)}>
          <Testers counts={counts} />
        </Section>
      )}
      <Section title={GESTURE.takeCount(takes.length)}>
        {takes.length === 0 ? (
          <p class="quiet">{GESTURE.noTakesYet}</p>
        ) : (
          <TakeList takes={takes} />
        )}
      </Section>
    </Screen>
  )
}

function Testers({ counts }: { counts: GestureCounts }) {
  return (
    <ul class="testers">
      {counts.testers.map((code) => (
        <li key={code} class="tester-count">
          {code}{' '}
          <span class="quiet">× {counts.takes.filter((t) => t.testerCode === code).length}</span>
        </li>
      ))}
    </ul>
  )
}

function medianLength({ takes }: GestureCounts): string {
  const lengths = takes
    .map(({ trim, durationMs }) => (trim === null ? durationMs : trim.endMs - trim.startMs))
    .sort((a, b) => a - b)
  const middle = lengths[Math.floor(lengths.length / 2)]
  return middle === undefined ? '–' : durationText(middle)
}
