import { fail, ok, type Result } from '../model/result'
import { AXES } from '../model/sample'
import { PLAN_LINK } from '../words/en/plan-link'
import type { Demonstration, Plan, PlanGesture } from './plan'
import { encodePlanLink } from './plan-link'

/**
 * Characters of a code of version 25, 117 modules a side, with error correction L (ISO/IEC 18004,
 * table 7): on a phone's screen of 62 mm a module is half a millimetre, which cameras tell apart at
 * 20 to 25 cm.
 */
export const MAX_CODE_CHARACTERS = 1273

/** A demonstration is thinned until its period is this long, ms; coarser ones show no movement. */
const COARSEST_MS = 200

/** A plan as one or several links, each of them whole: whoever opens one performs its gestures. */
export interface FittedPlan {
  links: { plan: Plan; address: string }[]
  /** Names of gestures whose demonstration is coarser than the designer's, and those without any. */
  thinned: string[]
  leftOut: string[]
}

/**
 * Makes a plan fit codes: demonstrations are thinned, then left out from the largest, then gestures
 * go to several codes.
 * @param base what stands before the fragment, such as 'https://example.org/app/#/join/'
 * @returns failure 'plan/no-code' when even one gesture without demonstration is too much
 */
export function fitPlan(
  plan: Plan,
  base: string,
  maxCharacters: number = MAX_CODE_CHARACTERS,
): Result<FittedPlan> {
  const shorter = { gestures: plan.gestures, thinned: new Set<string>(), leftOut: [] as string[] }
  for (;;) {
    const whole = { ...plan, gestures: shorter.gestures }
    const address = addressOf(whole, base)
    const { thinned, leftOut } = shorter
    if (address !== null && address.length <= maxCharacters) {
      return ok({ links: [{ plan: whole, address }], thinned: [...thinned], leftOut })
    }
    if (shorten(shorter)) continue
    const links = split(whole, base, maxCharacters)
    return links === null
      ? fail('plan/no-code', PLAN_LINK.oneTooMuch)
      : ok({ links, thinned: [], leftOut })
  }
}

function addressOf(plan: Plan, base: string): string | null {
  const link = encodePlanLink(plan)
  return link.ok ? base + link.value : null
}

/** Thins all demonstrations, or leaves the largest out; false when there is none left. */
function shorten(of: { gestures: PlanGesture[]; thinned: Set<string>; leftOut: string[] }) {
  const finest = of.gestures.filter(
    ({ demonstration: shown }) => shown !== null && thinner(shown) !== null,
  )
  if (finest.length > 0) {
    of.gestures = of.gestures.map((gesture) => {
      const next = gesture.demonstration && thinner(gesture.demonstration)
      if (next === null) return gesture
      of.thinned.add(gesture.name)
      return { ...gesture, demonstration: next }
    })
    return true
  }
  const size = ({ demonstration }: PlanGesture) => demonstration?.values.length ?? 0
  const largest = [...of.gestures].sort((a, b) => size(b) - size(a))[0]
  if (largest === undefined || size(largest) === 0) return false
  of.gestures = of.gestures.map((one) => (one === largest ? { ...one, demonstration: null } : one))
  of.thinned.delete(largest.name)
  of.leftOut.push(largest.name)
  return true
}

/** Means of two rows each; null when it would be too coarse. */
function thinner({ periodMs, values }: Demonstration): Demonstration | null {
  const rows = Math.floor(values.length / AXES / 2)
  if (2 * periodMs > COARSEST_MS || rows < 2) return null
  return {
    periodMs: 2 * periodMs,
    values: Array.from({ length: rows * AXES }, (_, i) => {
      const at = Math.floor(i / AXES) * 2 * AXES + (i % AXES)
      return Math.round((values[at]! + values[at + AXES]!) / 2) + 0
    }),
  }
}

/** As few plans as hold all gestures in their order, or null. */
function split(plan: Plan, base: string, maxCharacters: number): FittedPlan['links'] | null {
  const fits = (gestures: PlanGesture[]) => {
    const part = { number: 64, of: 64 }
    const address = addressOf({ ...plan, gestures, part }, base)
    return address !== null && address.length <= maxCharacters
  }
  const groups: PlanGesture[][] = []
  for (const gesture of plan.gestures) {
    if (!fits([gesture])) return null
    const last = groups.at(-1)
    if (last !== undefined && fits([...last, gesture])) last.push(gesture)
    else groups.push([gesture])
  }
  return groups.map((gestures, index) => {
    const part = { number: index + 1, of: groups.length }
    // The background is asked for once, with the last.
    const backgroundMs = index + 1 === groups.length ? plan.backgroundMs : 0
    const own = { ...plan, gestures, part, backgroundMs }
    return { plan: own, address: addressOf(own, base) ?? '' }
  })
}
