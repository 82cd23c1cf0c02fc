import type { Core } from '../core/core'
import type { TrainedModel } from '../model/evaluation'
import { matcherKind, type RecogniserModel } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import { isHit, type Observation } from './observations'
import { runVector, type VectorInput, type VectorStep } from './vector'

/** Movements of a session, and one to be recognised after it. */
const TAKES = 3

/**
 * Vectors of teaching on the prop: in place of a gesture, as one more, and both refusals. Each is
 * there only if the core says what it is to show. None for models with kernel features.
 */
export function taughtVectors(
  core: Core,
  { model, bytes }: Pick<TrainedModel, 'model' | 'bytes'>,
  all: readonly Observation[],
): VectorInput[] {
  if (matcherKind(model) !== 'template') return []
  const hits = model.gestures.map((_, gesture) =>
    all.filter((one) => one.truth === gesture && isHit(one)),
  )
  const firstThat = (says: RegExp, inputs: VectorInput[]) =>
    inputs.find((input) => says.test(runVector(core, bytes, input)))
  const each = (make: (own: Observation[], gesture: number) => VectorInput[]) =>
    hits.flatMap((own, gesture) => (own.length > TAKES ? make(own, gesture) : []))
  const found = [
    firstThat(
      /^taught done[\s\S]*?\nevent \S+ \S+ gesture /m,
      each((own, gesture) => [inPlace(own, gesture)]),
    ),
    firstThat(
      /^taught done[\s\S]*?\nevent \S+ \S+ gesture /m,
      each((own) => [oneMore(model, own)]),
    ),
    firstThat(
      /^taught near/m,
      each((own) => [tooNear(own)]),
    ),
    firstThat(/^taught unlike/m, unlike(hits)),
  ]
  return found.filter((input) => input !== undefined)
}

function inPlace(own: Observation[], gesture: number): VectorInput {
  return {
    name: 'taught-in-place',
    why: 'Three movements take the place of a gesture; a fourth is recognised, then forgotten.',
    from: fromOf(own.slice(0, TAKES + 1)),
    steps: [
      { teach: gesture },
      ...stepsOf(own.slice(0, TAKES + 1)),
      { forget: gesture },
      ...stepsOf(own.slice(TAKES, TAKES + 1)),
    ],
  }
}

/** The same movements made with the board turned over a corner are new to the model. */
function oneMore(model: RecogniserModel, own: Observation[]): VectorInput {
  const turned = stepsOf(own.slice(0, TAKES + 1)).map(turnedOverCorner)
  return {
    name: 'taught-one-more',
    why: 'A movement unknown to the model is taught as one gesture more, and recognised.',
    from: `${fromOf(own.slice(0, TAKES + 1))}, all with axes x y z taken for y z x; then ${own[0]?.from}`,
    steps: [
      { teach: null },
      ...turned,
      ...stepsOf(own.slice(0, 1)),
      { forget: model.gestures.length },
    ],
  }
}

function tooNear(own: Observation[]): VectorInput {
  return {
    name: 'taught-near',
    why: 'What the model knows already is refused as one gesture more.',
    from: fromOf(own.slice(0, TAKES)),
    steps: [{ teach: null }, ...stepsOf(own.slice(0, TAKES))],
  }
}

function unlike(hits: readonly Observation[][]): VectorInput[] {
  const firsts = hits.flatMap((own) => own.slice(0, 1))
  return firsts.slice(0, firsts.length - TAKES + 1).map((_, i) => {
    const three = firsts.slice(i, i + TAKES)
    return {
      name: 'taught-unlike',
      why: 'Three different movements are refused.',
      from: fromOf(three),
      steps: [{ teach: null }, ...stepsOf(three)],
    }
  })
}

function stepsOf(observations: readonly Observation[]): VectorStep[] {
  return observations.flatMap(({ steps }) => steps)
}

function fromOf(observations: readonly Observation[]): string {
  return observations.map(({ from }) => from).join(', then ')
}

function turnedOverCorner(step: VectorStep): VectorStep {
  if (!('samples' in step)) return step
  const { samples } = step
  return {
    samples: samples.map((_, at) => {
      const axis = at % AXES
      const sensor = axis < 3 ? 0 : 3
      return samples[at - axis + sensor + ((axis - sensor + 1) % 3)]!
    }),
  }
}
