import { sha256Hex } from '../format/sha256'
import { CORE_PROGRAM } from '../words/en/core-program'
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
  throw new CoreError(0, 'core/altered', CORE_PROGRAM.altered(bytes.length))
}

async function bytesOf(fetched: Promise<Answer>): Promise<Uint8Array<ArrayBuffer>> {
  let status: number | null = null
  try {
    const answer = await fetched
    if (answer.ok) return new Uint8Array(await answer.arrayBuffer())
    status = answer.status
  } catch {
    status = null
  }
  throw new CoreError(0, 'core/missing', CORE_PROGRAM.missing(status))
}
