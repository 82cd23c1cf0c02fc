import { demonstrate } from '../../src/shared/collect/demonstration'
import type { Plan } from '../../src/shared/collect/plan'
import { encodePlanLink } from '../../src/shared/collect/plan-link'
import { performance } from './hand-player'

/** A plan of two movements, in order, with a demonstration of each. */
export function examplePlan(change: Partial<Plan> = {}): Plan {
  return {
    id: 'plan-north-gate',
    libraryId: 'library-north-gate',
    title: 'Night parade, north gate',
    gestures: [
      {
        gestureId: 'gesture-raise',
        name: 'Raise',
        takes: 4,
        words: 'Lift the lantern from your hip to eye height, in one go.',
        demonstration: demonstrate(performance('raise', 3, 400), 1, 60),
      },
      {
        gestureId: 'gesture-ring',
        name: 'Ring',
        takes: 2,
        words: '',
        demonstration: demonstrate(performance('ring', 4, 400), 1, 60),
      },
    ],
    order: 'blocked',
    hand: 'own',
    grip: 'free',
    restEvery: 0,
    restMs: 0,
    backgroundMs: 0,
    part: { number: 1, of: 1 },
    ...change,
  }
}

/** The address that a scanned code opens. */
export function joinAddress(server: string, plan: Plan): string {
  const link = encodePlanLink(plan)
  if (!link.ok) throw new Error(link.message)
  return `${server}#/join/${link.value}`
}
