import type { Core } from '../core/core'
import { type BackgroundCount, countBackground } from '../evaluation/background-score'
import type { Fold } from '../evaluation/folds'
import type { TrainedModel } from '../model/evaluation'
import type { RecogniserModel } from '../model/recogniser-model'
import { ok, type Result } from '../model/result'
import { cutTake } from '../training/cut-take'
import type { PreparedTake } from '../training/prepare'
import { runStream } from '../training/stream'
import { trainPrepared } from '../training/train-model'

/** One held-out take. */
export interface TakeAnswer {
  takeId: string
  tester: string
  gesture: number
  right: boolean
  /** Gestures that pieces were answered with, where the take was cut in several; else none. */
  pieces: number[]
}

export interface FoldMeasure {
  answers: TakeAnswer[]
  background: BackgroundCount
  trained: TrainedModel
}

/** Trains on a fold's one half and counts what is right in the other. */
export function measureFold(core: Core, fold: Fold): Result<FoldMeasure> {
  const trained = trainPrepared(core, fold.train)
  if (!trained.ok) return trained
  const { model, bytes, distancePerLog } = trained.value
  const scale = { factor: fold.train.settings.thresholdFactor, distancePerLog }
  core.load(bytes)
  const indexOf = new Map(fold.test.gestures.map(({ id }, index) => [id, index]))
  const named = (gesture: number | null) => indexOf.get(model.gestures[gesture ?? -1]?.id ?? '')
  const answers = fold.test.takes.map((take): TakeAnswer => {
    const { cut, movement } = cutTake(core, take, model)
    const event = movement?.event
    const answer = event?.kind === 'gesture' ? named(event.gesture) : undefined
    return {
      takeId: take.take.id,
      tester: take.take.testerCode,
      gesture: take.gesture,
      right: answer === take.gesture,
      pieces: cut === 'split' ? piecesOf(core, take, model).flatMap((g) => named(g) ?? []) : [],
    }
  })
  const background = countBackground(core, fold.test.backgrounds, model, scale)
  return ok({ answers, background, trained: trained.value })
}

/** Gestures of the model that some piece of the take was answered with. */
function piecesOf(core: Core, take: PreparedTake, model: RecogniserModel): number[] {
  const movements = runStream(core, take.counts, model.segmenter)
  const within = movements.filter(({ event }) => event.start >= take.from && event.start < take.to)
  return within.flatMap(({ event }) =>
    event.kind === 'gesture' && event.gesture !== null ? [event.gesture] : [],
  )
}
