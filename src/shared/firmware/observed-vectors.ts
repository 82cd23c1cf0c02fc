import type { RecogniserModel } from '../model/recogniser-model'
import { identifierTails } from './c-text'
import { isHit, nearness, type Observation } from './observations'
import type { VectorInput } from './vector'

/** Vectors found among the library's own recordings; a kind that does not occur is left out. */
export function observedVectors(model: RecogniserModel, all: Observation[]): VectorInput[] {
  return [...acceptedVectors(model, all), ...borderVectors(all), ...backToBack(model, all)]
}

function acceptedVectors(model: RecogniserModel, all: Observation[]): VectorInput[] {
  const tails = identifierTails(model.gestures.map(({ name }) => name))
  return model.gestures.flatMap((_, gesture) => {
    const hit = hitOf(all, gesture)
    if (!hit) return []
    const name = `gesture-${tails[gesture]?.toLowerCase().replaceAll('_', '-')}`
    const why = `A take of gesture ${gesture} that is recognised.`
    return [{ name, why, from: hit.from, steps: hit.steps }]
  })
}

/** A recognised take of the gesture, if possible one that no template was cut from. */
function hitOf(all: Observation[], gesture: number): Observation | undefined {
  const hits = all.filter((one) => one.truth === gesture && isHit(one))
  return hits.find(({ events }) => events[0]?.distance !== 0) ?? hits[0]
}

/** Takes at the borders: nearest to the threshold from both sides, longest, shortest, each reason. */
function borderVectors(all: Observation[]): VectorInput[] {
  const single = all.filter(({ events }) => events.length === 1)
  const accepted = single.filter(({ events }) => events[0]?.kind === 'gesture')
  const because = (reason: string) => single.filter(({ events }) => events[0]?.reason === reason)
  const share = ({ events }: Observation) => (events[0] ? nearness(events[0]) : 0)
  const length = ({ events }: Observation) => (events[0] ? events[0].end - events[0].start : 0)
  const found: [string, string, Observation | undefined][] = [
    ['just-inside', 'The movement accepted nearest below its threshold.', top(accepted, share)],
    [
      'just-outside',
      'The movement rejected nearest above its threshold.',
      low(because('far'), share),
    ],
    ['far-outside', 'The movement farthest from every gesture.', top(because('far'), share)],
    ['ambiguous', 'A movement rejected since the runner-up is too near.', because('ambiguous')[0]],
    ['longest', 'The longest movement that is recognised.', top(accepted, length)],
    ['shortest', 'The shortest movement that is recognised.', low(accepted, length)],
    [
      'split',
      'A recording that is cut into several movements.',
      all.find((o) => o.events.length > 1),
    ],
  ]
  return found.flatMap(([name, why, one]) =>
    one ? [{ name, why, from: one.from, steps: one.steps }] : [],
  )
}

function backToBack(model: RecogniserModel, all: Observation[]): VectorInput[] {
  const hits = model.gestures.flatMap((_, gesture) => {
    const hit = hitOf(all, gesture)
    return hit ? [hit] : []
  })
  if (hits.length < 2) return []
  const first = hits.slice(0, 3)
  const steps = first.flatMap((hit) => hit.steps)
  const from = (some: Observation[]) => some.map((hit) => hit.from).join(', then ')
  return [
    { name: 'back-to-back', why: 'Movements one right after the other.', from: from(first), steps },
    {
      name: 'reset-between',
      why: 'A reset forgets all samples: the second movement counts from 0.',
      from: from(hits.slice(0, 2)),
      steps: [...(hits[0]?.steps ?? []), { reset: true }, ...(hits[1]?.steps ?? [])],
    },
  ]
}

function top(all: Observation[], key: (one: Observation) => number): Observation | undefined {
  return all.reduce<Observation | undefined>(
    (best, one) => (best === undefined || key(one) > key(best) ? one : best),
    undefined,
  )
}

function low(all: Observation[], key: (one: Observation) => number): Observation | undefined {
  return top(all, (one) => -key(one))
}
