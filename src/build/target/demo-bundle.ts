import { DEMO_SEED, generateDemoLibrary } from '../../shared/demo/demo-library'
import { type FirmwareInput, makeFirmwareBundle } from '../../shared/firmware/bundle'
import { lightEvidence } from '../../shared/firmware/light-note'
import { makeVectors } from '../../shared/firmware/make-vectors'
import type { FullLibrary } from '../../shared/model/library'
import { trainModel } from '../../shared/training/train-model'
import { readFirmwareSources } from '../core-files'
import { loadCoreForNode, loadLightForNode } from '../load-core'

/** What a bundle of a library is made of, trained here as the app trains it. */
export async function firmwareInput(full: FullLibrary): Promise<FirmwareInput> {
  const core = await loadCoreForNode()
  const trained = trainModel(core, full)
  if (!trained.ok) throw new Error(trained.message)
  const origin = {
    library: full.library,
    trained: trained.value,
    generatedFrom: 'Movewright',
  }
  return {
    ...origin,
    ...readFirmwareSources(),
    vectors: makeVectors(core, trained.value, full),
    ...lightEvidence(await loadLightForNode(), origin),
  }
}

/** The demo library's bundle: eight gestures. */
export async function demoFirmware(): Promise<FirmwareInput> {
  return firmwareInput(await generateDemoLibrary(DEMO_SEED))
}

export function bundleOf(input: FirmwareInput): Uint8Array {
  const bundle = makeFirmwareBundle(input)
  if (!bundle.ok) throw new Error(bundle.message)
  return bundle.value
}
