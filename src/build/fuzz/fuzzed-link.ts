import { deflateSync, strFromU8, strToU8 } from 'fflate'
import type { Plan } from '../../shared/collect/plan'
import { writePlanContent } from '../../shared/collect/plan-content'
import { decodePlanLink, encodePlanLink } from '../../shared/collect/plan-link'
import { toBase64url } from '../../shared/format/base64url'
import { crc32 } from '../../shared/format/crc32'
import type { Random } from '../../shared/statistics/random'
import { defaultTarget } from '../../shared/target/default-target'
import { examplePlan } from './examples'
import { mutateBytes, mutateText } from './mutate'
import { type FuzzSubject, roundTrip } from './round-trip'

const HEAD_BYTES = 11
/** The first two bytes of the content are the length of its JSON. */
const LENGTH_BYTES = 2

/** Links to plans: altered as they are, and altered inside with length and checksum right. */
export function fuzzedLink(): FuzzSubject {
  const { accel, gyro } = defaultTarget()
  const plan = { ...examplePlan(), ranges: { accel, gyro } }
  const link = encode(plan)
  const content = writePlanContent(plan)
  return {
    name: 'plan link',
    share: 0.15,
    alter: (random) =>
      random.integer(4) === 0
        ? mutateBytes(strToU8(link), random)
        : strToU8(packed(alteredContent(content, random))),
    judge: (bytes) => roundTrip(decodePlanLink(strFromU8(bytes, true)), encode, decodePlanLink),
  }
}

function encode(plan: Plan): string {
  const link = encodePlanLink(plan)
  if (!link.ok) throw new Error(`an accepted plan is refused by its writer: ${link.message}`)
  return link.value
}

function alteredContent(content: Uint8Array, random: Random): Uint8Array {
  if (random.integer(3) === 0) return mutateBytes(content, random)
  const jsonBytes = new DataView(content.buffer, content.byteOffset).getUint16(0, true)
  const text = strFromU8(content.subarray(LENGTH_BYTES, LENGTH_BYTES + jsonBytes))
  const json = strToU8(mutateText(text, random))
  const altered = new Uint8Array(content.length - jsonBytes + json.length)
  new DataView(altered.buffer).setUint16(0, json.length, true)
  altered.set(json, LENGTH_BYTES)
  altered.set(content.subarray(LENGTH_BYTES + jsonBytes), LENGTH_BYTES + json.length)
  return altered
}

/** As `encodePlanLink` packs. */
function packed(content: Uint8Array): string {
  const deflated = deflateSync(content, { level: 1 })
  const bytes = new Uint8Array(HEAD_BYTES + deflated.length)
  const view = new DataView(bytes.buffer)
  view.setUint8(0, 1)
  view.setUint16(1, deflated.length, true)
  view.setUint32(3, content.length, true)
  view.setUint32(7, crc32(deflated), true)
  bytes.set(deflated, HEAD_BYTES)
  return toBase64url(bytes)
}
