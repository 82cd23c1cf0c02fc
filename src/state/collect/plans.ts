import { computed, type ReadonlySignal } from '@preact/signals'
import { currentPlan } from '../../shared/collect/current-plan'
import type { Plan } from '../../shared/collect/plan'
import type { Library } from '../../shared/model/library'
import { fail, ok, type Result } from '../../shared/model/result'
import { COLLECTING } from '../../shared/words/en/collecting'
import { newId } from '../id'
import type { Shelf } from '../shelf'
import { NO_LIBRARY } from './no-library'

export interface PlansState {
  /** Plans of the open library, without gestures that are gone. */
  plans: ReadonlySignal<Plan[]>
  /** Adds it, or replaces the one of its id. Without gestures it is refused. */
  savePlan(plan: Plan): Promise<Result<null>>
  /** Can be undone. */
  removePlan(id: string): Promise<void>
}

const NO_GESTURES = fail('collect/no-gestures', COLLECTING.planEmpty)

export function createPlans(shelf: Shelf): PlansState {
  const openId = () => shelf.current.peek()?.id ?? ''
  /** Changes plans as they are stored: with gestures that are gone, which undo may bring back. */
  const change = async (libraryId: string, next: (stored: Plan[]) => Plan[]) => {
    const library = shelf.libraries.peek().find(({ id }) => id === libraryId)
    if (library === undefined) return NO_LIBRARY
    const saved = await shelf.save({ ...library, plans: next(library.plans ?? []) })
    return saved ? ok(null) : fail('collect/not-stored', COLLECTING.planNotStored)
  }
  return {
    plans: computed(() => {
      const library = shelf.current.value
      return library?.plans?.map((plan) => currentPlan(plan, library)) ?? []
    }),
    async savePlan(plan) {
      if (plan.gestures.length === 0) return NO_GESTURES
      // The library says itself what its ranges are, also when they change.
      const { ranges: _, ...kept } = plan
      return change(openId(), (stored) => [...without(stored, kept.id), kept])
    },
    async removePlan(id) {
      const libraryId = openId()
      const plan = shelf.current.peek()?.plans?.find((one) => one.id === id)
      const removed = await change(libraryId, (stored) => without(stored, id))
      if (!shelf.check(removed) || plan === undefined) return
      shelf.notices.say(COLLECTING.planDeleted, async () =>
        shelf.check(await change(libraryId, (stored) => [...without(stored, id), plan])),
      )
    },
  }
}

function without(plans: Plan[], planId: string): Plan[] {
  return plans.filter(({ id }) => id !== planId)
}

/** A new plan over all gestures of a library: five takes each, shuffled. */
export function freshPlan(library: Library): Plan {
  return {
    id: newId(),
    libraryId: library.id,
    title: library.name,
    gestures: library.gestures.map(({ id, name, note }) => ({
      gestureId: id,
      name,
      takes: 5,
      words: note.slice(0, 200),
      demonstration: null,
    })),
    order: 'shuffled',
    hand: 'own',
    grip: 'free',
    restEvery: 10,
    restMs: 20_000,
    backgroundMs: 60_000,
    part: { number: 1, of: 1 },
  }
}
