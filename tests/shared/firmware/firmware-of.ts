import { firmwareInput } from '../../../src/build/target/demo-bundle'
import type { FirmwareInput } from '../../../src/shared/firmware/bundle'
import type { FullLibrary } from '../../../src/shared/model/library'

/** Everything a bundle of a library is made of, trained here. */
export async function firmwareOf(full: FullLibrary): Promise<FirmwareInput> {
  return { ...(await firmwareInput(full)), generatedFrom: 'Movewright 0.1.0' }
}
