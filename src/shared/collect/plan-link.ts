import { deflateSync } from 'fflate'
import { fromBase64url, toBase64url } from '../format/base64url'
import { ByteReader } from '../format/byte-reader'
import { crc32 } from '../format/crc32'
import { inflateExactly } from '../format/inflate'
import { fail, ok, type Result } from '../model/result'
import { PLAN_LINK } from '../words/en/plan-link'
import type { Plan } from './plan'
import { readPlanContent, writePlanContent } from './plan-content'

const VERSION = 1
/** Later versions count on from here; a first byte above was garbled on the way. */
const LAST_VERSION = 15
/** Version, length of the packed content, length of the content, CRC-32 of the packed content. */
const HEAD_BYTES = 1 + 2 + 4 + 4
const MAX_PACKED_BYTES = 0xffff
const MAX_CONTENT_BYTES = 0x40000

const CUT = fail('plan/cut', PLAN_LINK.cut)
const ALTERED = fail('plan/altered', PLAN_LINK.altered)
const TOO_LARGE = fail('plan/too-large', PLAN_LINK.planTooLarge)

/**
 * A plan as the fragment of a link, without '#' or any path: base64url of a head and the deflated
 * content. Browsers send no fragment to a server.
 * @returns failure 'plan/too-large' for a plan that no reader would take
 */
export function encodePlanLink(plan: Plan): Result<string> {
  const content = writePlanContent(plan)
  const packed = deflateSync(content, { level: 9 })
  if (packed.length > MAX_PACKED_BYTES || content.length > MAX_CONTENT_BYTES) {
    return fail('plan/too-large', PLAN_LINK.tooLarge)
  }
  const bytes = new Uint8Array(HEAD_BYTES + packed.length)
  const view = new DataView(bytes.buffer)
  view.setUint8(0, VERSION)
  view.setUint16(1, packed.length, true)
  view.setUint32(3, content.length, true)
  view.setUint32(7, crc32(packed), true)
  bytes.set(packed, HEAD_BYTES)
  return ok(toBase64url(bytes))
}

/**
 * Reads what `encodePlanLink` wrote, or what somebody made of it.
 * @returns failures 'plan/empty', 'plan/cut', 'plan/altered', 'plan/newer', 'plan/too-large', each one
 *   sentence that says what to do
 */
export function decodePlanLink(fragment: string): Result<Plan> {
  if (fragment === '') {
    return fail('plan/empty', PLAN_LINK.empty)
  }
  const bytes = fromBase64url(fragment)
  if (bytes === null) return ALTERED
  const version = bytes[0] ?? VERSION
  if (version > LAST_VERSION) return ALTERED
  if (version > VERSION) {
    return fail('plan/newer', PLAN_LINK.newer)
  }
  if (bytes.length < HEAD_BYTES) return CUT
  const head = new ByteReader(bytes, 1)
  const [packedLength, length, crc] = [head.u16(), head.u32(), head.u32()]
  if (length > MAX_CONTENT_BYTES) return TOO_LARGE
  const packed = bytes.subarray(HEAD_BYTES)
  if (packed.length < packedLength) return CUT
  if (version !== VERSION || packed.length > packedLength || crc32(packed) !== crc) return ALTERED
  const content = inflateExactly(packed, length)
  const plan = content === null ? null : readPlanContent(content)
  return plan === null ? ALTERED : ok(plan)
}
