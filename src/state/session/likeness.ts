import type { RecogniserClient } from '../../recogniser/client'
import type { QualityWord } from '../../recording/types'
import type { Library, RecordingWithSamples, Take } from '../../shared/model/library'
import { SESSION_TROUBLE } from '../../shared/words/en/session-trouble'
import type { Store } from '../../storage/store'

type TakeWithSamples = RecordingWithSamples<Take>

/** Fewer takes of a gesture say nothing about what is usual; the new one counts. */
const LEAST_TAKES = 5
/** Enough to compare with, and few enough to be compared before the tester wonders. */
const MOST_OWN = 11
const MOST_OTHERS = 3
/** A tester is not kept waiting longer: without an answer the take is taken for good, ms. */
const PATIENCE_MS = 1500

export interface LikenessParts {
  store: Pick<Store, 'loadSamples'>
  client: Pick<RecogniserClient, 'compareTakes'>
  library: Library
}

/** Tells a take that is unlike the tester's others of its gesture, by the recogniser's own distance. */
export class Likeness {
  readonly #parts: LikenessParts
  /** Newest last. */
  #takes: Take[]
  readonly #samples = new Map<string, TakeWithSamples>()

  /** @param takes those of the session that are stored */
  constructor(parts: LikenessParts, takes: Take[]) {
    this.#parts = parts
    this.#takes = takes
  }

  add(item: TakeWithSamples): void {
    this.#takes = [...this.#takes, item.recording]
    this.#samples.set(item.recording.id, item)
  }

  remove(id: string): void {
    this.#takes = this.#takes.filter((take) => take.id !== id)
    this.#samples.delete(id)
  }

  /** Null when it is like the others, or nobody can say yet. */
  async judge(item: TakeWithSamples): Promise<QualityWord | null> {
    const { gestureId, id } = item.recording
    const own = this.#some(gestureId, MOST_OWN)
    if (own.length + 1 < LEAST_TAKES) return null
    const { library, client } = this.#parts
    const others = library.gestures
      .filter((gesture) => gesture.id !== gestureId)
      .flatMap((gesture) => this.#some(gesture.id, MOST_OTHERS))
    const recordings = [...(await this.#load([...own, ...others])), item]
    const abort = new AbortController()
    const timer = setTimeout(() => abort.abort(), PATIENCE_MS)
    const compared = await client.compareTakes({ library, recordings }, { signal: abort.signal })
    clearTimeout(timer)
    const found = compared.ok ? compared.value.takes.find(({ takeId }) => takeId === id) : undefined
    if (found?.far !== true || found.ratio === null) return null
    const nearer = library.gestures.find((gesture) => gesture.id === found.nearer)
    return {
      code: 'unlike',
      text: SESSION_TROUBLE.unlike(found.ratio, nearer?.name ?? null),
    }
  }

  #some(gestureId: string, most: number): Take[] {
    return this.#takes.filter((take) => take.gestureId === gestureId).slice(-most)
  }

  async #load(takes: Take[]): Promise<TakeWithSamples[]> {
    const loaded = await Promise.all(
      takes.map(async (recording) => {
        const known = this.#samples.get(recording.id)
        if (known !== undefined) return known
        const samples = await this.#parts.store.loadSamples(recording.id)
        if (samples === null) return null
        const item = { recording, samples }
        this.#samples.set(recording.id, item)
        return item
      }),
    )
    return loaded.filter((item) => item !== null)
  }
}
