import * as v from 'valibot'
import { planSchema } from '../format/collect-schema'
import { hand, instant, text } from '../format/schema-parts'
import type { DeviceFacts, Hand } from '../model/library'
import type { Plan } from './plan'
import type { Session } from './session'
import type { SessionRun } from './session-run'
import { CODE_BYTES, newTesterCode } from './tester-code'

const key = v.pipe(v.string(), v.regex(/^[0-9a-f]{32}$/))
const recordingId = v.pipe(text(100), v.minLength(1))

/** A session under way, as it lies in storage. */
const runSchema = v.strictObject({
  kind: v.literal('run'),
  id: key,
  plan: planSchema,
  seed: v.pipe(v.number(), v.integer()),
  testerCode: v.pipe(text(40), v.minLength(1)),
  testerKey: key,
  hand,
  consentAt: instant,
  startedAt: instant,
  endedAt: v.nullable(instant),
  outcomes: v.pipe(
    v.array(
      v.variant('kind', [
        v.strictObject({ kind: v.literal('kept'), recordingId }),
        v.strictObject({ kind: v.literal('skipped') }),
        v.strictObject({ kind: v.literal('rested') }),
      ]),
    ),
    v.maxLength(10_000),
  ),
})

/** What is stored of a run: plain data, marked as what it is. */
export function recordOf(run: SessionRun): v.InferOutput<typeof runSchema> {
  return { kind: 'run', ...run }
}

/** Takes over what `recordOf` stored; null for anything else. */
export function runFrom(value: unknown): SessionRun | null {
  const read = v.safeParse(runSchema, value)
  if (!read.success) return null
  const { kind: _, ...run } = read.output
  return run
}

/** Random bytes that a new run is made of. */
export const RUN_BYTES = 16 + 16 + CODE_BYTES + 4

/** A tester who performed another part of the plan before, and is the same person here. */
export type KnownTester = Pick<SessionRun, 'testerCode' | 'testerKey' | 'hand'>

/** The same session begun by somebody known: no person is two testers. */
export function asTester(
  run: SessionRun,
  { testerCode, testerKey, hand }: KnownTester,
): SessionRun {
  return { ...run, testerCode, testerKey, hand }
}

/** A session that begins now. @param random `RUN_BYTES` random bytes */
export function newRun(plan: Plan, as: Hand, at: string, random: Uint8Array): SessionRun {
  const codeAt = 32
  const seedAt = codeAt + CODE_BYTES
  return {
    id: hex(random.subarray(0, 16)),
    plan,
    seed: new DataView(random.buffer, random.byteOffset).getUint32(seedAt),
    testerCode: newTesterCode(random.subarray(codeAt, seedAt)),
    testerKey: hex(random.subarray(16, 32)),
    hand: as,
    consentAt: at,
    startedAt: at,
    endedAt: null,
    outcomes: [],
  }
}

/** The session as it goes home. @param device of its recordings; they come from one phone */
export function sessionOf(run: SessionRun, device: DeviceFacts, now: string): Session {
  const { id, plan, testerCode, testerKey, hand: ownHand, consentAt, startedAt, endedAt } = run
  return {
    id,
    planId: plan.id,
    libraryId: plan.libraryId,
    title: plan.title,
    testerCode,
    testerKey,
    hand: ownHand,
    consentAt,
    startedAt,
    endedAt: endedAt ?? now,
    device,
    gestures: plan.gestures.map(({ gestureId, name }) => ({ id: gestureId, name })),
  }
}

function hex(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
