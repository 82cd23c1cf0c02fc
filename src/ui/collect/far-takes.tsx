import type { ComparedTake, TakesCompared } from '../../shared/collect/takes-compared'
import type { Gesture } from '../../shared/model/library'
import { farText } from '../../shared/words/en/collect-words'
import { plural } from '../../shared/words/en/numbers'
import type { CollectState } from '../../state/collect'
import { Button, route, Section, useApp, useSamples } from '../common'
import { SmallTrace } from '../moves/small-trace'

/** Takes far from the others of their gesture: to look at, keep, relabel or drop. */
export function FarTakes({
  collect,
  compared,
}: {
  collect: CollectState
  compared: TakesCompared
}) {
  const { library } = useApp()
  const gestures = library.current.value?.gestures ?? []
  const here = new Set(library.recordings.value.map(({ id }) => id))
  const kept = collect.keptFar.value
  const far = compared.takes
    .filter(({ takeId, far }) => far && here.has(takeId) && !kept.has(takeId))
    .sort((a, b) => (b.ratio ?? 0) - (a.ratio ?? 0))
  const comparedCount = compared.takes.filter(({ ratio }) => ratio !== null).length
  if (far.length === 0) {
    return (
      <p role="status">No take lies far from the others of its gesture (n = {comparedCount}).</p>
    )
  }
  return (
    <Section title={`${plural('take', far.length)} far from the others`}>
      <p class="quiet small">
        Measured by the recogniser's own distance to the nearest takes of other testers; n ={' '}
        {comparedCount}. A far take may be a mistake, or a manner that only one tester has: look
        before you drop it.
      </p>
      <ul class="far-takes">
        {far.map((take) => (
          <FarTake key={take.takeId} collect={collect} take={take} gestures={gestures} />
        ))}
      </ul>
    </Section>
  )
}

interface FarTakeProps {
  collect: CollectState
  take: ComparedTake
  gestures: readonly Gesture[]
}

function FarTake({ collect, take, gestures }: FarTakeProps) {
  const { library } = useApp()
  const recording = library.recordings.value.find(({ id }) => id === take.takeId)
  const [samples] = useSamples(recording === undefined ? [] : [recording])
  const name = gestures.find(({ id }) => id === take.gestureId)?.name ?? ''
  const nearer = gestures.find(({ id }) => id === take.nearer)
  return (
    <li class="far-take">
      <p>
        <strong>{name}</strong> by {take.testerCode}: {farText(take, gestures)}
      </p>
      {samples !== undefined && recording !== undefined && (
        <div class="far-trace">
          <SmallTrace samples={samples} durationMs={recording.durationMs} />
        </div>
      )}
      <div class="buttons">
        <Button href={route('replay', take.takeId)}>Look</Button>
        <Button onClick={() => void collect.keepFar(take.takeId)}>Keep</Button>
        {nearer !== undefined && (
          <Button onClick={() => void library.relabel(take.takeId, nearer.id)}>
            It is {nearer.name}
          </Button>
        )}
        <Button onClick={() => void collect.drop([take.takeId])}>Drop</Button>
      </div>
    </li>
  )
}
