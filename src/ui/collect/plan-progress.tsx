import { missingTakes } from '../../shared/collect/missing-takes'
import type { Plan } from '../../shared/collect/plan'
import { useApp } from '../common'

/** Takes still missing, for each tester and gesture. */
export function PlanProgress({ plan }: { plan: Plan }) {
  const { library } = useApp()
  const sessions = library.current.value?.sessions ?? []
  const progress = missingTakes(plan, sessions, library.recordings.value)
  return (
    <>
      <p class="quiet small">Takes here, of those asked for.</p>
      <div class="tester-scroll">
        <table class="tester-table" aria-label="Takes here, of those asked for">
          <thead>
            <tr>
              <th scope="col">Tester</th>
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
