import { readFirmwareSources } from '../../../src/build/core-files'
import { loadCoreForNode, loadLightForNode } from '../../../src/build/load-core'
import type { FirmwareInput } from '../../../src/shared/firmware/bundle'
import { makeVectors } from '../../../src/shared/firmware/make-vectors'
import { lightFindings } from '../../../src/shared/light/safety'
import type { FullLibrary } from '../../../src/shared/model/library'
import { trainModel } from '../../../src/shared/training/train-model'

/** Everything a bundle of a library is made of, trained here. */
export async function firmwareOf(full: FullLibrary): Promise<FirmwareInput> {
  const core = await loadCoreForNode()
  const trained = trainModel(core, full)
  if (!trained.ok) throw new Error(trained.message)
  return {
    library: full.library,
    trained: trained.value,
    ...readFirmwareSources(),
    vectors: makeVectors(core, trained.value, full),
    lightFindings: lightFindings(await loadLightForNode(), full.library),
    generatedFrom: 'Movewright 0.1.0',
  }
}
