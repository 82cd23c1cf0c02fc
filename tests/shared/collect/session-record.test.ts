import { expect, it } from 'vitest'
import {
  newRun,
  RUN_BYTES,
  recordOf,
  runFrom,
  sessionOf,
} from '../../../src/shared/collect/session-record'
import { advanced } from '../../../src/shared/collect/session-run'
import { readTesterCode } from '../../../src/shared/collect/tester-code'
import { examplePlan } from '../../browser/collect-plan'

const AT = '2026-11-25T18:00:00.000Z'
const random = Uint8Array.from({ length: RUN_BYTES }, (_, i) => (37 * i + 11) % 256)
const run = newRun(examplePlan(), 'left', AT, random)

it('draws id, key, code and seed from the bytes, and no name', () => {
  expect(run.id).toMatch(/^[0-9a-f]{32}$/)
  expect(run.testerKey).toMatch(/^[0-9a-f]{32}$/)
  expect(run.testerKey).not.toBe(run.id)
  expect(readTesterCode(run.testerCode)).toEqual({ ok: true, value: run.testerCode })
  expect(newRun(examplePlan(), 'left', AT, random)).toEqual(run)
})

it('comes back from storage as it was stored, at every step', () => {
  let now = run
  for (const id of ['a', 'b', 'c']) {
    now = advanced(now, { kind: 'kept', recordingId: id }, AT)
    expect(runFrom(structuredClone(recordOf(now)))).toEqual(now)
  }
  const skipped = advanced(now, { kind: 'skipped' }, AT)
  expect(runFrom(structuredClone(recordOf(skipped)))).toEqual(skipped)
})

it('takes nothing from storage that is no run', () => {
  const stored = recordOf(run)
  for (const wrong of [
    null,
    'run',
    {},
    { ...stored, kind: 'session' },
    { ...stored, testerCode: '' },
    { ...stored, outcomes: [{ kind: 'kept' }] },
    { ...stored, plan: { ...stored.plan, gestures: [] } },
    { ...stored, more: 1 },
  ]) {
    expect(runFrom(wrong)).toBe(null)
  }
})

it('goes home with its own times and the gestures of its plan', () => {
  const device = {
    label: 'phone',
    rateHz: 60,
    accelStepMps2: 0.1,
    gyroStepDps: 0.1,
    accelSign: 1,
    hasGyro: true,
  } as const
  const later = '2026-11-25T18:09:00.000Z'
  expect(sessionOf(run, device, later)).toMatchObject({
    id: run.id,
    planId: run.plan.id,
    consentAt: AT,
    endedAt: later,
    gestures: [
      { id: 'gesture-raise', name: 'Raise' },
      { id: 'gesture-ring', name: 'Ring' },
    ],
  })
  expect(sessionOf({ ...run, endedAt: AT }, device, later).endedAt).toBe(AT)
})
