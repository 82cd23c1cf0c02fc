import fc from 'fast-check'
import { deflateSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import type { Plan } from '../../../src/shared/collect/plan'
import { decodePlanLink, encodePlanLink } from '../../../src/shared/collect/plan-link'
import { fromBase64url, toBase64url } from '../../../src/shared/format/base64url'
import { crc32 } from '../../../src/shared/format/crc32'
import { TARGET_PRESETS } from '../../../src/shared/target/presets'
import { samplePlan } from './samples'

function link(plan: Plan): string {
  const encoded = encodePlanLink(plan)
  if (!encoded.ok) throw new Error(encoded.message)
  return encoded.value
}

function refusal(fragment: string): string {
  const read = decodePlanLink(fragment)
  return read.ok ? 'read' : `${read.code}: ${read.message}`
}

const whole = (min: number, max: number) => fc.integer({ min, max })
const demonstration = fc.record({
  periodMs: whole(20, 500),
  values: whole(0, 40).chain((rows) =>
    fc.array(whole(-127, 127), { minLength: 6 * rows, maxLength: 6 * rows }),
  ),
})
const range = fc.record({
  fullScale: fc.double({ min: 0.001, max: 100_000, noNaN: true }),
  nanoPerLsb: whole(1, 2 ** 31),
})
const plans: fc.Arbitrary<Plan> = fc
  .record({
    id: fc.constant('plan-1'),
    libraryId: fc.constant('parade'),
    title: fc.string({ minLength: 1, maxLength: 100, unit: 'grapheme-ascii' }),
    gestures: fc.array(
      fc.record({
        gestureId: fc.stringMatching(/^[0-9a-f]{32}$/),
        name: fc.constantFrom('Raise', '持ち上げる', 'Élever ☂'),
        takes: whole(1, 50),
        words: fc.string({ maxLength: 80 }),
        demonstration: fc.option(demonstration),
      }),
      { minLength: 1, maxLength: 12 },
    ),
    order: fc.constantFrom('shuffled', 'blocked'),
    hand: fc.constantFrom('own', 'left', 'right', 'both'),
    grip: fc.constantFrom('free', 'marked'),
    restEvery: whole(0, 1000),
    restMs: whole(0, 600_000),
    backgroundMs: whole(0, 3_600_000),
    part: fc.constant({ number: 1, of: 2 }),
    folder: fc.option(fc.constant('https://files.example.org/team/')),
    ranges: fc.option(fc.record({ accel: range, gyro: range })),
  })
  .map(({ folder, ranges, ...plan }): Plan => {
    return {
      ...plan,
      ...(folder === null ? {} : { folder }),
      ...(ranges === null ? {} : { ranges }),
    }
  })

/** Written for the sample plan before plans knew of ranges. */
const OLD_LINK =
  'AZgAwQAAACZWZtQ1jU0KwkAMhePSvQcIWUdp_cNDiAu3QxeBGduBIS3jVPFcHs6lpooJvJdHyJcnOBqS6LImpkGy-GDDKbZdwX90FVs37La8rqx4P6nlmmtTR1nidTo7_3zHdIyXgqULaOgSsmJ_Cxkf_ZixC-JR1GMKBWNB398VpZWoK3t1qHjdGJRy1HZCfm3DRKxjSrYiamC2eAPAHF4AHw'

describe('the link of a plan', () => {
  test('holds nothing that an address or a message would alter', () => {
    expect(link(samplePlan())).toMatch(/^[A-Za-z0-9_-]+$/)
  })

  test('gives the plan back, whatever is in it', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        expect(decodePlanLink(link(plan))).toEqual({ ok: true, value: plan })
      }),
    )
  })

  test('that was made before plans had ranges is read as it was', () => {
    expect(decodePlanLink(OLD_LINK)).toEqual({ ok: true, value: samplePlan() })
  })

  test('grows by no more than 30 characters for the ranges of the usual sensors', () => {
    const bare = link(samplePlan()).length
    const pairs = TARGET_PRESETS.flatMap(({ accelRanges, gyroRanges }) =>
      accelRanges.flatMap((accel) => gyroRanges.map((gyro) => ({ accel, gyro }))),
    )
    expect(pairs.length).toBeGreaterThan(30)
    const longest = Math.max(...pairs.map((ranges) => link(samplePlan({ ranges })).length))
    expect(longest - bare).toBeLessThanOrEqual(30)
  })

  test('is refused when its ranges are not whole', () => {
    const ranges = { accel: { fullScale: 8, nanoPerLsb: 244_000 }, gyro: {} }
    expect(refusal(link(samplePlan({ ranges } as Partial<Plan>)))).toMatch(/^plan\/altered: /)
  })

  test('is refused when its end is missing, wherever it was cut', () => {
    const text = link(samplePlan())
    for (let length = 1; length < text.length - 1; length++) {
      expect(refusal(text.slice(0, length))).toMatch(/^plan\/cut: The end of this link is missing/)
    }
  })

  test('is refused when any single bit of it was altered', () => {
    const bytes = fromBase64url(link(samplePlan()))!
    for (let bit = 0; bit < bytes.length * 8; bit++) {
      const altered = bytes.slice()
      altered[bit >> 3]! ^= 1 << (bit & 7)
      expect(refusal(toBase64url(altered))).toMatch(/^plan\/(altered|newer|cut|too-large): /)
    }
  })

  test('is refused when it comes from a newer Movewright, with what to do', () => {
    const bytes = fromBase64url(link(samplePlan()))!
    bytes[0] = 2
    expect(refusal(toBase64url(bytes))).toBe(
      'plan/newer: This plan was made by a newer Movewright: open the app once with a network, take the update, and scan again.',
    )
  })

  test('is not taken for a newer one when its first byte was garbled', () => {
    const bytes = fromBase64url(link(samplePlan()))!
    for (const first of [0, 16, 65, 128, 255]) {
      bytes[0] = first
      expect(refusal(toBase64url(bytes))).toMatch(/^plan\/altered: /)
    }
  })

  test('is refused before it is unpacked when it claims to be huge', () => {
    const bomb = deflateSync(new Uint8Array(40_000_000))
    const head = new Uint8Array(11)
    const view = new DataView(head.buffer)
    view.setUint8(0, 1)
    view.setUint16(1, bomb.length & 0xffff, true)
    view.setUint32(3, 40_000_000, true)
    expect(refusal(toBase64url(Uint8Array.from([...head, ...bomb])))).toMatch(/^plan\/too-large: /)
  })

  test('is refused when it unpacks to more than it claims', () => {
    const packed = deflateSync(new Uint8Array(40_000_000))
    const head = new Uint8Array(11)
    const view = new DataView(head.buffer)
    view.setUint8(0, 1)
    view.setUint16(1, packed.length, true)
    view.setUint32(3, 100, true)
    view.setUint32(7, crc32(packed), true)
    expect(refusal(toBase64url(Uint8Array.from([...head, ...packed])))).toMatch(/^plan\/altered: /)
  })

  test.each(['', '%%%', 'AQAA', 'hello world'])('is refused when it is "%s"', (text) => {
    expect(refusal(text)).toMatch(/^plan\/(empty|altered|cut): \S.+\.$/)
  })

  test('never throws, whatever the characters', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        expect(decodePlanLink(text).ok).toBe(false)
      }),
    )
  })
})

test('base64url agrees with Node for bytes of any length', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 70 }), (bytes) => {
      expect(toBase64url(bytes)).toBe(Buffer.from(bytes).toString('base64url'))
      expect(fromBase64url(toBase64url(bytes))).toEqual(bytes)
    }),
  )
})
