import { missingTakes } from '../../shared/collect/missing-takes'
import type { Plan } from '../../shared/collect/plan'
import { COLLECT_PLANS } from '../../shared/words/en/collect-plans'
import { useApp } from '../common'

/** Takes still missing, for each tester and gesture. */
export function PlanProgress({ plan }: { plan: Plan }) {
  const { library } = useApp()
  const sessions = library.current.value?.sessions ?? []
  const progress = missingTakes(plan, sessions, library.recordings.value)
  return (
    <>
      <p class="quiet small">{COLLECT_PLANS.plan.takesHereHint}</p>
      <div class="tester-scroll">
        <table class="tester-table" aria-label={COLLECT_PLANS.plan.takesHere}>
          <thead>
            <tr>
              <th scope="col">{COLLECT_PLANS.plan.tester}</th>
              {plan.gestures.map(({ gestureId, name }) => (
                <th key={gestureId} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {progress.map(({ testerCode, gestures }) => (
              <tr key={testerCode}>
                <th scope="row">{testerCode}</th>
                {gestures.map(({ gestureId, takes, wanted, missing }) => (
                  <td key={gestureId} class={missing > 0 ? 'tester-missing' : undefined}>
                    {takes}/{wanted}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  )
}
