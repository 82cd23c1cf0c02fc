import type { Recording } from '../model/library'
import type { Plan } from './plan'
import type { Session } from './session'

/** How far one tester has come with a plan. */
export interface TesterProgress {
  testerCode: string
  /** In the order of the plan's gestures. */
  gestures: { gestureId: string; takes: number; wanted: number; missing: number }[]
  missing: number
}

/** Takes brought home and takes still missing, for each tester whose sessions followed the plan. */
export function missingTakes(
  plan: Plan,
  sessions: readonly Session[],
  recordings: readonly Recording[],
): TesterProgress[] {
  const wanted = plan.gestures.map(({ gestureId, takes }) => ({
    gestureId,
    wanted: plan.hand === 'both' ? 2 * takes : takes,
  }))
  const planned = new Set(sessions.filter((one) => one.planId === plan.id).map((one) => one.id))
  const own = recordings.filter(
    ({ sessionId }) => sessionId !== undefined && planned.has(sessionId),
  )
  const codes = [...new Set(own.map(({ testerCode }) => testerCode))].sort()
  return codes.map((testerCode) => {
    const gestures = wanted.map(({ gestureId, wanted }) => {
      const takes = own.filter(
        (one) =>
          one.kind === 'take' && one.testerCode === testerCode && one.gestureId === gestureId,
      ).length
      return { gestureId, takes, wanted, missing: Math.max(0, wanted - takes) }
    })
    const missing = gestures.reduce((sum, one) => sum + one.missing, 0)
    return { testerCode, gestures, missing }
  })
}
