import { fail, ok } from '../../src/shared/model/result'
import type { RecogniserService } from '../../src/shared/protocol/recogniser'

/** Loaded with the first file: most visits open none. */
const loadFormat = () => import('../../src/shared/format/library-file')

/** Library files here, so that thousands of rows of CSV never hold up the screen. */
export function createFileService(): Pick<RecogniserService, 'writeLibrary' | 'readLibrary'> {
  return {
    writeLibrary: async (full) => {
      const { writeLibraryFile } = await loadFormat()
      try {
        return ok(writeLibraryFile(full))
      } catch (error) {
        // Only a library that breaks its own rules, such as one damaged in storage.
        if (error instanceof RangeError) return fail('library/unsound', error.message)
        throw error
      }
    },

    readLibrary: async (bytes) => (await loadFormat()).readLibraryFile(bytes),
  }
}
