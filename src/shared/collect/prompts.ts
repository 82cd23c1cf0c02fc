import { createRandom, type Random } from '../statistics/random'
import { shuffled } from '../statistics/shuffled'
import type { Plan, Prompt } from './plan'

type TakePrompt = Extract<Prompt, { kind: 'take' }>

/**
 * Everything a tester is asked, in order. The same plan and seed give the same prompts, so that a
 * session that was interrupted goes on where it stood.
 * @param seed any integer, drawn once for the session
 */
export function promptsOf(plan: Plan, seed: number): Prompt[] {
  const prompts: Prompt[] = []
  for (const [index, take] of takesInOrder(plan, createRandom(seed)).entries()) {
    const rested = plan.restEvery > 0 && index > 0 && index % plan.restEvery === 0
    if (rested) prompts.push({ kind: 'rest', durationMs: plan.restMs })
    prompts.push(take)
  }
  if (plan.backgroundMs > 0) prompts.push({ kind: 'background', durationMs: plan.backgroundMs })
  return prompts
}

function takesInOrder(plan: Plan, random: Random): TakePrompt[] {
  if (plan.hand !== 'both') {
    return inOrder(plan, plan.hand === 'own' ? null : plan.hand, random)
  }
  // One hand after the other, since changing it for each take costs time and takes go wrong.
  const hands = shuffled(['left', 'right'] as const, random)
  return hands.flatMap((hand) => inOrder(plan, hand, random))
}

/** All takes of one hand. Shuffled in rounds: each gesture once before any comes again. */
function inOrder(plan: Plan, hand: TakePrompt['hand'], random: Random): TakePrompt[] {
  const asked = plan.gestures.map(({ gestureId, takes }) =>
    Array.from({ length: takes }, (_, i): TakePrompt => {
      return { kind: 'take', gestureId, number: i + 1, of: takes, hand }
    }),
  )
  if (plan.order === 'blocked') return asked.flat()
  const rounds = Math.max(0, ...asked.map((takes) => takes.length))
  return Array.from({ length: rounds }, (_, round) =>
    shuffled(
      asked.flatMap((takes) => takes.slice(round, round + 1)),
      random,
    ),
  ).flat()
}
