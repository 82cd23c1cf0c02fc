import { type Core, CoreError } from '../../shared/core/core'
import { crc32 } from '../../shared/format/crc32'
import { decodeModel, encodeModel } from '../../shared/format/model-bytes'
import { mutateBytes } from './mutate'
import type { FuzzSubject } from './round-trip'

const MOVEMENT = Int16Array.from({ length: 60 * 6 }, (_, i) => ((i * 7919) % 30_000) - 15_000)

/**
 * Model bytes: the core refuses them by a status or takes them and recognises without a trap; what the
 * app decodes, it encodes to the same bytes.
 */
export function fuzzedModel(core: Core, model: Uint8Array): FuzzSubject {
  return {
    name: 'model',
    share: 0.1,
    alter: (random) => {
      const altered = mutateBytes(model, random)
      return random.integer(8) === 0 ? altered : withChecksum(altered)
    },
    judge: (bytes) => {
      const loaded = loads(core, bytes)
      if (loaded) core.push(MOVEMENT)
      const decoded = decodeModel(bytes)
      if (!decoded.ok) return 'refused'
      if (!loaded) return 'refused'
      const again = encodeModel(decoded.value)
      return Buffer.from(again).equals(bytes)
        ? 'same'
        : { wrong: 'decoded, but other bytes when encoded again' }
    },
  }
}

/** The last four bytes are the CRC-32 of all before; mended, the fields themselves are judged. */
function withChecksum(bytes: Uint8Array): Uint8Array {
  if (bytes.length < 8) return bytes
  const end = bytes.length - 4
  new DataView(bytes.buffer, bytes.byteOffset).setUint32(end, crc32(bytes.subarray(0, end)), true)
  return bytes
}

function loads(core: Core, bytes: Uint8Array): boolean {
  try {
    core.load(bytes)
    return true
  } catch (error) {
    if (error instanceof CoreError || error instanceof RangeError) return false
    throw error
  }
}
