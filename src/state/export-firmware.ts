import { fail, type Result } from '../shared/model/result'
import type { OutFile } from './exports'

/** The firmware bundle of the current library. */
export async function exportFirmware(): Promise<Result<OutFile>> {
  return fail('export/firmware', 'The firmware bundle cannot be written yet.')
}
