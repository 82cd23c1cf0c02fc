import { strFromU8, strToU8 } from 'fflate'
import { readSessionFile, writeSessionFile } from '../../shared/collect/session-file'
import type { Core } from '../../shared/core/core'
import { readLibraryFile, writeLibraryFile } from '../../shared/format/library-file'
import { readSamplesCsv, writeSamplesCsv } from '../../shared/format/samples-csv'
import type { Random } from '../../shared/statistics/random'
import { exampleLibrary, exampleSession } from './examples'
import { fuzzedBackup } from './fuzzed-backup'
import { fuzzedLink } from './fuzzed-link'
import { fuzzedLog } from './fuzzed-log'
import { fuzzedModel } from './fuzzed-model'
import { mutateBytes, mutateInside, mutateText } from './mutate'
import { type FuzzSubject, roundTrip } from './round-trip'

/** Every reader at the app's borders, with a valid input to alter. */
export async function fuzzSubjects(core: Core, model: Uint8Array): Promise<FuzzSubject[]> {
  const library = writeLibraryFile(exampleLibrary())
  const session = writeSessionFile(exampleSession())
  const csv = writeSamplesCsv(exampleLibrary().recordings[0]!.samples)
  const readCsv = (text: string) => readSamplesCsv(text, 'take.csv')
  return [
    {
      name: 'library file',
      share: 0.3,
      alter: outOrIn(library),
      judge: (bytes) => roundTrip(readLibraryFile(bytes), writeLibraryFile, readLibraryFile),
    },
    {
      name: 'session file',
      share: 0.2,
      alter: outOrIn(session),
      judge: (bytes) => roundTrip(readSessionFile(bytes), writeSessionFile, readSessionFile),
    },
    {
      name: 'samples',
      share: 0.1,
      alter: (random) => strToU8(mutateText(csv, random)),
      judge: (bytes) => roundTrip(readCsv(strFromU8(bytes)), writeSamplesCsv, readCsv),
    },
    fuzzedLink(),
    fuzzedLog(),
    fuzzedModel(core, model),
    await fuzzedBackup(),
  ]
}

/** A third with bytes of the ZIP itself altered, the others with a part of it altered and packed again. */
function outOrIn(zip: Uint8Array): (random: Random) => Uint8Array {
  return (random) =>
    random.integer(3) === 0 ? mutateBytes(zip, random) : mutateInside(zip, random)
}
