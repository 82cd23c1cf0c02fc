import type { ComparedTake, TakesCompared } from '../../shared/collect/takes-compared'
import type { Gesture } from '../../shared/model/library'
import { COLLECT_TESTERS } from '../../shared/words/en/collect-testers'
import { farText } from '../../shared/words/en/collect-words'
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
    return <p role="status">{COLLECT_TESTERS.far.none(comparedCount)}</p>
  }
  return (
    <Section title={COLLECT_TESTERS.far.title(far.length)}>
      <p class="quiet small">{COLLECT_TESTERS.far.hint(comparedCount)}</p>
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
        <strong>{name}</strong> {COLLECT_TESTERS.far.why(take.testerCode, farText(take, gestures))}
      </p>
      {samples !== undefined && recording !== undefined && (
        <div class="far-trace">
          <SmallTrace samples={samples} durationMs={recording.durationMs} />
        </div>
      )}
      <div class="buttons">
        <Button href={route('replay', take.takeId)}>{COLLECT_TESTERS.far.look}</Button>
        <Button onClick={() => void collect.keepFar(take.takeId)}>
          {COLLECT_TESTERS.far.keep}
        </Button>
        {nearer !== undefined && (
          <Button onClick={() => void library.relabel(take.takeId, nearer.id)}>
            {COLLECT_TESTERS.far.itIs(nearer.name)}
          </Button>
        )}
        <Button onClick={() => void collect.drop([take.takeId])}>{COLLECT_TESTERS.far.drop}</Button>
      </div>
    </li>
  )
}
