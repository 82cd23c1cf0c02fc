import { generateDemoLibrary } from '../../../src/shared/demo/demo-library'
import type { FullLibrary } from '../../../src/shared/model/library'

/** Two testers and a minute of background of the demo: enough to train, quick enough for a test. */
export async function smallLibrary(): Promise<FullLibrary> {
  const { library, recordings } = await generateDemoLibrary(7)
  const testers = [...new Set(recordings.map(({ recording }) => recording.testerCode))].slice(0, 2)
  const few = recordings.filter(({ recording }) => testers.includes(recording.testerCode))
  return { library, recordings: few }
}
