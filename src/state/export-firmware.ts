import { loadFirmwareSources } from '../export/core-files'
import type { RecogniserClient } from '../recogniser/client'
import { makeFirmwareBundle } from '../shared/firmware/bundle'
import { lightEvidence } from '../shared/firmware/light-note'
import { fileWord } from '../shared/format/file-names'
import type { LightPlayer } from '../shared/light/player'
import { fail, ok, type Result } from '../shared/model/result'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { App } from './app'
import type { OutFile } from './exports'
import type { Shelf } from './shelf'

/** The firmware bundle of the current library: trains if need be, makes vectors, packs. */
export async function exportFirmware(
  { store, current }: Shelf,
  train: App['train'],
  recogniser: RecogniserClient,
  loadLight: () => Promise<LightPlayer>,
): Promise<Result<OutFile>> {
  const open = current.value
  if (open === null) return fail('export/no-library', OPEN_LIBRARY.noneToExport)
  const trained = await train()
  if (!trained.ok) return trained
  const full = await store.loadFull(open.id)
  if (full === null) return fail('export/no-library', OPEN_LIBRARY.goneToExport)
  const vectors = await recogniser.vectors(full, trained.value)
  if (!vectors.ok) return vectors
  const origin = {
    library: full.library,
    trained: trained.value,
    generatedFrom: 'Movewright',
  }
  const bundle = makeFirmwareBundle({
    ...origin,
    ...(await loadFirmwareSources()),
    vectors: vectors.value,
    ...lightEvidence(await loadLight(), origin),
  })
  if (!bundle.ok) return bundle
  return ok({
    fileName: `${fileWord(full.library.name, 'library')}-firmware.zip`,
    bytes: bundle.value,
  })
}
