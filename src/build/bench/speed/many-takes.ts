import { generateDemoLibrary, seededUuid } from '../../../shared/demo/demo-library'
import type { FullLibrary } from '../../../shared/model/library'
import { createRandom } from '../../../shared/statistics/random'

const SEED = 1
/** Generated; the others are these once more under ids of their own. */
const GENERATED = { testers: 10, takesPerGesture: 25, backgroundS: 0 }

/** A library of so many takes of the demo's length: ten testers, eight gestures. */
export async function libraryOfTakes(count: number): Promise<FullLibrary> {
  const { library, recordings } = await generateDemoLibrary(SEED, undefined, undefined, GENERATED)
  const ids = createRandom(SEED)
  return {
    library: { ...library, name: `${count} takes` },
    recordings: Array.from({ length: count }, (_, i) => {
      const { recording, samples } = recordings[i % recordings.length]!
      return { recording: { ...recording, id: seededUuid(ids) }, samples }
    }),
  }
}
