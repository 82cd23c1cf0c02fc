import { readFirmwareSources } from '../../../src/build/core-files'
import { loadCoreForNode, loadLightForNode } from '../../../src/build/load-core'
import type { FirmwareInput } from '../../../src/shared/firmware/bundle'
import { lightEvidence } from '../../../src/shared/firmware/light-note'
import { makeVectors } from '../../../src/shared/firmware/make-vectors'
import type { FullLibrary } from '../../../src/shared/model/library'
import { trainModel } from '../../../src/shared/training/train-model'

/** Everything a bundle of a library is made of, trained here. */
export async function firmwareOf(full: FullLibrary): Promise<FirmwareInput> {
  const core = await loadCoreForNode()
  const trained = trainModel(core, full)
  if (!trained.ok) throw new Error(trained.message)
  const origin = {
    library: full.library,
    trained: trained.value,
    generatedFrom: 'Movewright 0.1.0',
  }
  return {
    ...origin,
    ...readFirmwareSources(),
    vectors: makeVectors(core, trained.value, full),
    ...lightEvidence(await loadLightForNode(), origin),
  }
}
