import { sha256Hex } from '../format/sha256'
import { CoreError } from './core'

/** What fetching gave, as far as it matters here. */
interface Answer {
  ok: boolean
  status: number
  arrayBuffer(): Promise<ArrayBuffer>
}

/**
 * The wasm that a host sent, when it is the one that was built. One wrong bit may still be a valid
 * program, and then gives wrong answers without a word; none is better.
 * @param digest SHA-256 in lower-case hex
 * @throws CoreError 'core/missing', 'core/altered'
 */
export async function soundProgram(
  fetched: Promise<Answer>,
  digest: string,
): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = await bytesOf(fetched)
  if (sha256Hex(bytes) === digest.trim()) return bytes
  throw new CoreError(
    0,
    'core/altered',
    `The recogniser's program is altered or cut short (${bytes.length} bytes), so it was not started. Your takes are untouched. Reload while online; a host must hand out .wasm files as they are.`,
  )
}

async function bytesOf(fetched: Promise<Answer>): Promise<Uint8Array<ArrayBuffer>> {
  let reason: string
  try {
    const answer = await fetched
    if (answer.ok) return new Uint8Array(await answer.arrayBuffer())
    reason = `the host answered ${answer.status}`
  } catch {
    reason = 'the network is away or the transfer broke off'
  }
  throw new CoreError(
    0,
    'core/missing',
    `The recogniser's program could not be loaded: ${reason}. Your takes are untouched. Reload while online; on a host of your own, upload the whole folder again.`,
  )
}
