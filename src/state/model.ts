import { computed } from '@preact/signals'
import type { RecogniserClient } from '../recogniser/client'
import { atFactor } from '../shared/evaluation/at-factor'
import type { GripTolerance } from '../shared/grip/grip-tolerance'
import type { Evaluation, Holdout, TrainedModel } from '../shared/model/evaluation'
import type { FullLibrary, Library } from '../shared/model/library'
import type { Replay } from '../shared/model/replay'
import { fail, type Result } from '../shared/model/result'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { Store } from '../storage/store'
import type { Job } from './app'
import { evaluationFingerprint, fingerprint } from './fingerprint'
import { createJobSlot, type JobSlot } from './jobs'
import { keepResults, type ResultKeeper } from './kept-results'
import { createModelKeeper, type ModelKeeper } from './model-keeper'
import type { Shelf } from './shelf'

export interface Jobs {
  training: JobSlot<TrainedModel>
  evaluation: JobSlot<Evaluation>
  grip: JobSlot<GripTolerance>
  /** Where trained models are put aside. */
  keeper: ModelKeeper
  replay(recordingId: string): Promise<Result<Replay>>
}

const NO_LIBRARY = fail('job/no-library', OPEN_LIBRARY.none)

/**
 * Training, evaluation and replay of the current library, in the worker.
 * @param core which core measures, as `KeepOptions.core`
 */
export function createJobs(shelf: Shelf, recogniser: RecogniserClient, core: string): Jobs {
  const keeper = createModelKeeper(shelf, core)
  const { evaluations, grips } = keepersOf(shelf.store, core)
  const owner = () => shelf.current.value?.id ?? null
  const current = computed(() => fingerprint(shelf.current.value, shelf.recordings.value))
  const basis = () => current.value
  const measurable = computed(() =>
    evaluationFingerprint(shelf.current.value, shelf.recordings.value),
  )
  const load = async (): Promise<FullLibrary | null> => {
    const id = shelf.current.peek()?.id
    return id === undefined ? null : shelf.store.loadFull(id)
  }

  const training = createJobSlot<TrainedModel>({
    owner,
    basis,
    work: async (_variant, signal, onProgress) => {
      const full = await load()
      if (full === null) return NO_LIBRARY
      const trained = await recogniser.train(full, { signal, onProgress })
      if (trained.ok) void keeper.trained(full, trained.value, () => freshFor(full, evaluations))
      return trained
    },
  })
  const measured = createJobSlot<Evaluation>({
    owner,
    basis: () => measurable.value,
    work: async (holdout, signal, onProgress) => {
      const full = await load()
      if (full === null) return NO_LIBRARY
      const found = await recogniser.evaluate(full, holdout as Holdout, { signal, onProgress })
      if (found.ok) void keeper.evaluated(full, found.value, () => training.run())
      return found
    },
    keeper: evaluations,
  })

  const evaluation: JobSlot<Evaluation> = {
    ...measured,
    job: computed(() => atOwnFactor(measured.job.value, shelf.current.value)),
  }

  const grip = createJobSlot<GripTolerance>({
    owner,
    basis,
    work: async (_variant, signal, onProgress) => {
      const full = await load()
      return full === null ? NO_LIBRARY : recogniser.grip(full, { signal, onProgress })
    },
    keeper: grips,
  })

  const replay = async (recordingId: string): Promise<Result<Replay>> => {
    const library = shelf.current.peek()
    const recording = shelf.recordings.peek().find((one) => one.id === recordingId)
    const samples = await shelf.store.loadSamples(recordingId)
    if (library === null || recording === undefined || samples === null) {
      return fail('replay/missing', OPEN_LIBRARY.notOfThis)
    }
    const trained = await training.run()
    if (!trained.ok) return trained
    const { accelSign } = recording.device
    const trim = recording.kind === 'take' ? recording.trim : 'background'
    return recogniser.replay(trained.value.model, library.target, samples, accelSign, trim)
  }
  return { training, evaluation, grip, keeper, replay }
}

function keepersOf(store: Store, core: string) {
  return {
    evaluations: keepResults<Evaluation>({
      ...{ store, core, name: 'evaluation' },
      loadCheck: async () => (await import('../shared/format/evaluation-schema')).isEvaluation,
    }),
    grips: keepResults<GripTolerance>({
      ...{ store, core, name: 'grip' },
      loadCheck: async () => (await import('../shared/format/grip-schema')).isGripTolerance,
    }),
  }
}

/**
 * The last evaluation of this library, at the threshold factor that it has: another factor alone asks for a
 * new model and not for a new measurement. Null when there is none that is fresh.
 */
async function freshFor(
  { library, recordings }: FullLibrary,
  evaluations: ResultKeeper<Evaluation>,
): Promise<Evaluation | null> {
  const kept = await evaluations.read(library.id)
  const facts = recordings.map(({ recording }) => recording)
  if (kept === null || kept.byOther || kept.basis !== evaluationFingerprint(library, facts)) {
    return null
  }
  return atFactor(kept.value, library.training.thresholdFactor)
}

/** Figures of the threshold factor that is set now. */
function atOwnFactor(job: Job<Evaluation>, library: Library | null): Job<Evaluation> {
  if (job.state !== 'done' || library === null) return job
  return { ...job, value: atFactor(job.value, library.training.thresholdFactor) }
}
