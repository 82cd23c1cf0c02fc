import type { TakesCompared } from '../../shared/collect/takes-compared'
import type { Take } from '../../shared/model/library'
import { COLLECT_TESTERS } from '../../shared/words/en/collect-testers'
import { route, useApp } from '../common'

/** Testers down, gestures across: takes, and how many of them lie far from the others. */
export function TesterTable({ compared }: { compared: TakesCompared | null }) {
  const { library } = useApp()
  const gestures = library.current.value?.gestures ?? []
  const takes = library.recordings.value.filter((one): one is Take => one.kind === 'take')
  const testers = [...new Set(takes.map(({ testerCode }) => testerCode))].sort()
  const far = new Set(compared?.takes.filter((one) => one.far).map(({ takeId }) => takeId))
  return (
    <>
      <p class="quiet small">
        {compared === null ? COLLECT_TESTERS.table.legend : COLLECT_TESTERS.table.legendCompared}
      </p>
      <div class="tester-scroll">
        <table class="tester-table" aria-label={COLLECT_TESTERS.table.label}>
          <thead>
            <tr>
              <th scope="col">{COLLECT_TESTERS.table.tester}</th>
              {gestures.map(({ id, name }) => (
                <th key={id} scope="col">
                  <a href={route('gesture', id)}>{name}</a>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {testers.map((tester) => (
              <tr key={tester}>
                <th scope="row">
                  {tester}
                  {takes.some((one) => one.testerCode === tester && one.hand === 'left') && (
                    <abbr class="tester-left" title={COLLECT_TESTERS.table.withLeft}>
                      {COLLECT_TESTERS.table.left}
                    </abbr>
                  )}
                </th>
                {gestures.map(({ id }) => {
                  const own = takes.filter(
                    (one) => one.testerCode === tester && one.gestureId === id,
                  )
                  const out = own.filter((one) => far.has(one.id)).length
                  return (
                    <td key={id} class={own.length === 0 ? 'tester-missing' : undefined}>
                      {own.length === 0 ? '·' : own.length}
                      {out > 0 && <strong> +{out}</strong>}
                    </td>
                  )
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  )
}
