import { computed, type ReadonlySignal } from '@preact/signals'
import type { RecogniserClient } from '../../recogniser/client'
import type { DataDecision } from '../../shared/decide/data-decision'
import type { GestureDecision } from '../../shared/decide/gesture-decision'
import type { SensorDecision } from '../../shared/decide/sensor-decision'
import type { FullLibrary } from '../../shared/model/library'
import { fail, type Result } from '../../shared/model/result'
import type { RunParts } from '../../shared/parts/part-jobs'
import type { OnProgress } from '../../shared/protocol/recogniser'
import { OPEN_LIBRARY } from '../../shared/words/en/open-library'
import type { Job } from '../app'
import { fingerprint } from '../fingerprint'
import { createJobSlot, type JobSlot } from '../jobs'
import { keepResults } from '../kept-results'
import type { Shelf } from '../shelf'

/** Design decisions from what was recorded: which gestures, how much data, which sensor. */
export interface DecideState {
  gestures: ReadonlySignal<Job<GestureDecision>>
  decideGestures(): Promise<void>
  data: ReadonlySignal<Job<DataDecision>>
  decideData(): Promise<void>
  sensor: ReadonlySignal<Job<SensorDecision>>
  /** @param tolerance loss that is accepted, as a share of takes */
  decideSensor(tolerance: number): Promise<void>
}

export interface DecideParts {
  shelf: Shelf
  recogniser: RecogniserClient
  /** Which core measures, as `KeepOptions.core`. */
  core: string
}

const NO_LIBRARY = fail('job/no-library', OPEN_LIBRARY.none)

type Check<T> = (value: unknown) => value is T
type Work<T> = (
  run: RunParts,
  full: FullLibrary,
  onProgress: OnProgress,
  variant: string,
) => Promise<Result<T>>

const loadSchema = () => import('../../shared/format/decide-schema')

export function createDecide({ shelf, recogniser, core }: DecideParts): DecideState {
  const read = computed(() => fingerprint(shelf.current.value, shelf.recordings.value))
  /** Rates, ranges and times of the sweep follow from these too, which training does not read. */
  const withPart = computed(() => {
    const target = shelf.current.value?.target
    return JSON.stringify([read.value, target?.preset, target?.clockHz, target?.flashBytes])
  })
  const slot = <T>(
    name: string,
    basis: ReadonlySignal<string>,
    loadCheck: () => Promise<Check<T>>,
    work: Work<T>,
  ): JobSlot<T> =>
    createJobSlot<T>({
      owner: () => shelf.current.value?.id ?? null,
      basis: () => basis.value,
      keeper: keepResults<T>({ store: shelf.store, core, name, loadCheck }),
      work: async (variant, signal, onProgress) => {
        const id = shelf.current.peek()?.id
        const full = id === undefined ? null : await shelf.store.loadFull(id)
        if (full === null) return NO_LIBRARY
        return work(recogniser.parts({ signal, onProgress }), full, onProgress, variant)
      },
    })
  const gestures = slot<GestureDecision>(
    'decide-gestures',
    read,
    async () => (await loadSchema()).isGestureDecision,
    async (run, full, onProgress) => {
      const { decideGesturesInParts } = await import('../../shared/decide/decide-gestures')
      return decideGesturesInParts(run, full, onProgress)
    },
  )
  const data = slot<DataDecision>(
    'decide-data',
    read,
    async () => (await loadSchema()).isDataDecision,
    async (run, full, onProgress) => {
      const { decideDataInParts } = await import('../../shared/decide/decide-data')
      return decideDataInParts(run, full, onProgress)
    },
  )
  const sensor = slot<SensorDecision>(
    'decide-sensor',
    withPart,
    async () => (await loadSchema()).isSensorDecision,
    async (run, full, onProgress, variant) => {
      const { decideSensorInParts } = await import('../../shared/decide/decide-sensor')
      return decideSensorInParts(run, full, onProgress, { tolerance: Number(variant) })
    },
  )
  return {
    gestures: gestures.job,
    decideGestures: async () => void (await gestures.run()),
    data: data.job,
    decideData: async () => void (await data.run()),
    sensor: sensor.job,
    decideSensor: async (tolerance) => void (await sensor.run(String(tolerance))),
  }
}
