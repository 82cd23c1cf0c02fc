import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan, Prompt } from '../../../src/shared/collect/plan'
import { promptsOf } from '../../../src/shared/collect/prompts'
import { progressOf, promptsMs, TAKE_MS } from '../../../src/shared/collect/session-progress'
import {
  advanced,
  currentPrompt,
  endedEarly,
  promptHand,
  reconciled,
  type SessionRun,
  undone,
} from '../../../src/shared/collect/session-run'
import type { Recording } from '../../../src/shared/model/library'

const AT = '2026-11-25T18:00:00.000Z'

const PLAN: Plan = {
  id: 'plan',
  libraryId: 'library',
  title: 'Night parade',
  gestures: [
    { gestureId: 'raise', name: 'Raise', takes: 3, words: '', demonstration: null },
    { gestureId: 'ring', name: 'Ring', takes: 2, words: '', demonstration: null },
  ],
  order: 'shuffled',
  hand: 'own',
  grip: 'free',
  restEvery: 2,
  restMs: 10_000,
  backgroundMs: 60_000,
  part: { number: 1, of: 1 },
}

const START: SessionRun = {
  id: 'session',
  plan: PLAN,
  seed: 5,
  testerCode: 'K7Q4MXA',
  testerKey: 'key',
  hand: 'left',
  consentAt: AT,
  startedAt: AT,
  endedAt: null,
  outcomes: [],
}

/** What is stored when a prompt was answered. */
function recordingFor(prompt: Prompt, id: string, n: number): Recording {
  const facts = {
    id,
    libraryId: 'library',
    testerCode: START.testerCode,
    hand: 'left',
    source: 'phone',
    recordedAt: new Date(Date.UTC(2026, 10, 25, 18, 0, n)).toISOString(),
    device: {
      label: '',
      rateHz: 60,
      accelStepMps2: 0.1,
      gyroStepDps: 0.1,
      accelSign: 1,
      hasGyro: true,
    },
    sampleCount: 10,
    durationMs: prompt.kind === 'take' ? 1500 : prompt.durationMs,
    gaps: [],
    note: '',
    deletedAt: null,
    sessionId: START.id,
  } as const
  return prompt.kind === 'take'
    ? { ...facts, gaps: [], kind: 'take', gestureId: prompt.gestureId, trim: null }
    : { ...facts, gaps: [], kind: 'background' }
}

/** Answers everything that is asked, up to so many prompts. */
function play(run: SessionRun, count: number): { run: SessionRun; stored: Recording[] } {
  const stored: Recording[] = []
  let now = run
  for (let n = 0; n < count; n++) {
    const prompt = currentPrompt(now)
    if (prompt === null) break
    if (prompt.kind === 'rest') now = advanced(now, { kind: 'rested' }, AT)
    else {
      const recording = recordingFor(prompt, `r${n}`, n)
      stored.push(recording)
      now = advanced(now, { kind: 'kept', recordingId: recording.id }, AT)
    }
  }
  return { run: now, stored }
}

describe('a session under way', () => {
  const prompts = promptsOf(PLAN, START.seed)

  it('asks every prompt once and is over then', () => {
    const { run, stored } = play(START, 100)
    expect(run.endedAt).toBe(AT)
    expect(currentPrompt(run)).toBe(null)
    expect(stored.map((one) => (one.kind === 'take' ? one.gestureId : 'background'))).toEqual(
      prompts.flatMap((one) =>
        one.kind === 'rest' ? [] : one.kind === 'take' ? one.gestureId : one.kind,
      ),
    )
    expect(progressOf(run)).toEqual({ total: 5, done: 5, kept: 5, remainingMs: 0 })
  })

  it('counts takes and tells the time that is left, rests and background included', () => {
    const twoRests = 2 * PLAN.restMs
    expect(progressOf(START).remainingMs).toBe(5 * TAKE_MS + twoRests + PLAN.backgroundMs)
    const skipped = advanced(START, { kind: 'skipped' }, AT)
    expect(progressOf(skipped)).toMatchObject({ total: 5, done: 1, kept: 0 })
    expect(promptsMs(prompts.slice(1))).toBe(progressOf(skipped).remainingMs)
  })

  it('takes the last take back, through a rest, and asks it again', () => {
    const { run } = play(START, 3)
    expect(run.outcomes.map(({ kind }) => kind)).toEqual(['kept', 'kept', 'rested'])
    const back = undone(run)
    expect(back?.recordingId).toBe('r1')
    expect(currentPrompt(back!.run)).toEqual(prompts[1])
    expect(undone(undone(back!.run)!.run)).toBe(null)
  })

  it('takes the last take back after the end, and goes on', () => {
    const { run } = play(START, 100)
    expect(currentPrompt(undone(run)!.run)).toEqual(prompts.at(-1))
  })

  it('ends early with what was kept, and is asked nothing more', () => {
    const ended = endedEarly(play(START, 2).run, AT)
    expect(currentPrompt(ended)).toBe(null)
    expect(progressOf(ended)).toMatchObject({ kept: 2, remainingMs: 0 })
    expect(advanced(ended, { kind: 'skipped' }, AT)).toBe(ended)
  })

  it('asks for the hand of the prompt, else for the tester’s own', () => {
    expect(promptHand(START)).toBe('left')
    const both = { ...START, plan: { ...PLAN, hand: 'right' as const } }
    expect(promptHand(both)).toBe('right')
  })
})

describe('after a kill', () => {
  it('goes on where it stood, whatever was noted of what was stored', () => {
    fc.assert(
      fc.property(fc.nat(9), fc.nat(9), fc.array(fc.nat(5)), (steps, lost, order) => {
        const { run, stored } = play(START, steps)
        // The last notes never reached the disk; the takes did.
        const noted = { ...run, endedAt: null, outcomes: run.outcomes.slice(0, -1 - lost) }
        const anyOrder = order.length % 2 === 0 ? stored : [...stored].reverse()
        const after = reconciled(noted, anyOrder, AT)
        const kept = after.outcomes.flatMap((one) => (one.kind === 'kept' ? one.recordingId : []))
        expect(new Set(kept).size).toBe(kept.length)
        expect(kept).toHaveLength(stored.length)
        for (const [at, outcome] of after.outcomes.entries()) {
          if (outcome.kind !== 'kept') continue
          const recording = stored.find(({ id }) => id === outcome.recordingId)
          const prompt = promptsOf(PLAN, START.seed)[at]
          expect(recording?.kind).toBe(prompt?.kind)
          if (prompt?.kind === 'take' && recording?.kind === 'take') {
            expect(recording.gestureId).toBe(prompt.gestureId)
          }
        }
      }),
    )
  })

  it('notes the one take that was stored between keeping and noting', () => {
    const { run, stored } = play(START, 2)
    const noted = { ...run, outcomes: run.outcomes.slice(0, 1) }
    expect(reconciled(noted, stored, AT)).toEqual(run)
    expect(reconciled(run, stored, AT)).toEqual(run)
  })

  it('asks again for the take whose taking back was under way', () => {
    const { run, stored } = play(START, 3)
    const after = reconciled(run, stored.slice(0, 1), AT)
    expect(after).toEqual(undone(run)?.run)
  })

  it('asks for the rest of a background that was cut short', () => {
    const { run, stored } = play(START, 7)
    const background = prompts7()
    const piece = { ...recordingFor(background, 'piece', 50), durationMs: 20_000 }
    expect(currentPrompt(reconciled(run, [...stored, piece], AT))).toEqual(background)
    const second = { ...recordingFor(background, 'second', 51), durationMs: 39_000 }
    expect(reconciled(run, [...stored, piece, second], AT).endedAt).toBe(AT)
  })
})

function prompts7(): Prompt {
  const prompt = promptsOf(PLAN, START.seed)[7]
  if (prompt?.kind !== 'background') throw new Error('The plan ends with its background.')
  return prompt
}
