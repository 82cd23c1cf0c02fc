import { expect, it } from 'vitest'
import type { Plan, Prompt } from '../../../src/shared/collect/plan'
import {
  aboutMinutes,
  countDownText,
  doubtWords,
  holdWords,
  phaseWords,
  promptName,
  promptWords,
} from '../../../src/shared/words/en/session-words'

const PLAN: Plan = {
  id: 'plan',
  libraryId: 'library',
  title: 'Night parade',
  gestures: [
    { gestureId: 'raise', name: 'Raise', takes: 3, words: 'Up in one go.', demonstration: null },
  ],
  order: 'blocked',
  hand: 'own',
  grip: 'free',
  restEvery: 0,
  restMs: 0,
  backgroundMs: 0,
  part: { number: 1, of: 1 },
}
const TAKE: Prompt = { kind: 'take', gestureId: 'raise', number: 2, of: 3, hand: null }
const LEFT: Prompt = { ...TAKE, hand: 'left' }
const REST: Prompt = { kind: 'rest', durationMs: 10_000 }
const BACKGROUND: Prompt = { kind: 'background', durationMs: 60_000 }

it('rounds the time that is left up, so that nobody is promised too little', () => {
  expect(aboutMinutes(59_000)).toBe('less than a minute')
  expect(aboutMinutes(60_001)).toBe('about 2\u202fmin')
  expect(countDownText(24_100)).toBe('25\u202fs')
  expect(countDownText(65_000)).toBe('1:05\u202fmin')
})

it('names each kind of prompt and says what the hand does in it', () => {
  expect([TAKE, REST, BACKGROUND].map((prompt) => promptName(PLAN, prompt))).toEqual([
    'Raise',
    'Rest',
    'Anything else',
  ])
  expect(promptWords(PLAN, TAKE)).toBe('Up in one go.')
  expect(promptWords(PLAN, REST)).toMatch(/arm/)
})

it('says how to hold the prop only where it matters', () => {
  expect(holdWords(PLAN, TAKE)).toBe('')
  expect(holdWords(PLAN, LEFT)).toBe('With the left hand.')
  const marked = { ...PLAN, grip: 'marked' as const }
  expect(holdWords(marked, TAKE)).toBe('Hold it with the screen towards you at the start.')
  expect(holdWords(marked, LEFT)).toBe('With the left hand, the screen towards you at the start.')
  expect(holdWords(marked, REST)).toBe('')
})

it('speaks the name where the eye has it large already', () => {
  const facts = { prompt: TAKE, name: 'Raise', doubts: [] }
  expect(phaseWords('waiting', facts)).toEqual({
    heard: 'Next: Raise, 2 of 3.',
    seen: 'Tap Start, move at the sound.',
  })
  expect(phaseWords('ready', facts)).toEqual({ heard: 'Raise.', seen: 'Hold still …' })
  expect(phaseWords('go', facts).seen).toBe('Now: Raise!')
  expect(phaseWords('doubt', { ...facts, doubts: ['too-short'] })).toEqual({
    heard: 'That was very short.',
    seen: 'Once more?',
  })
})

it('has a sentence of its own for everything that can be wrong with a take', () => {
  const codes = ['nothing-moved', 'too-short', 'clipped', 'gap', 'no-gyro', 'cut-in-two', 'unlike']
  const sentences = new Set([...codes, 'something new'].map(doubtWords))
  expect(sentences.size).toBe(codes.length + 1)
})
