import type { TeachCost } from '../../shared/teach/teach-cost'
import { TEACH_SCREENS } from '../../shared/words/en/teach-screens'
import {
  teachBackgroundWords,
  teachCostWords,
  teachPlaceWords,
} from '../../shared/words/en/teach-words'
import type { TeachState } from '../../state/teach'
import { RateAxis, RateBar, rateAxisStart } from '../charts'
import { Notice, route, Section } from '../common'

/** What the taught gesture costs the others, once it is measured. */
export function Cost({ teach }: { teach: TeachState }) {
  const job = teach.cost.value
  if (job.state === 'failed') {
    return (
      <Notice tone="trouble" live>
        <p>{job.message}</p>
      </Notice>
    )
  }
  return job.state === 'done' && !job.stale ? <CostResult cost={job.value} /> : null
}

function CostResult({ cost }: { cost: TeachCost }) {
  const words = teachCostWords(cost)
  const more = [teachPlaceWords(cost), teachBackgroundWords(cost)].filter((text) => text !== '')
  const from = rateAxisStart([cost.before, cost.after])
  return (
    <>
      <Section title={TEACH_SCREENS.cost.title}>
        <p class="teach-seen">{words.seen}</p>
        <p>{words.means}</p>
        <p>{words.todo}</p>
        {cost.accepted > 0 && (
          <>
            <RateAxis from={from} />
            <RateBar name={TEACH_SCREENS.cost.without} rate={cost.before} from={from} />
            <RateBar name={TEACH_SCREENS.cost.with} rate={cost.after} from={from} />
          </>
        )}
        {more.map((text) => (
          <p key={text}>{text}</p>
        ))}
      </Section>
      {cost.lost.length > 0 && (
        <Section title={TEACH_SCREENS.cost.lost} aside={<span>{cost.lost.length}</span>}>
          <ul class="outcomes">
            {cost.lost.map(({ takeId, testerCode, performed, taught }) => (
              <li key={takeId}>
                <a class="outcome" href={route('replay', takeId)}>
                  <b>{testerCode}</b>
                  <span>
                    {taught
                      ? TEACH_SCREENS.cost.nowTaught(performed)
                      : TEACH_SCREENS.cost.nowElse(performed)}
                  </span>
                  <span class="quiet" aria-hidden="true">
                    ›
                  </span>
                </a>
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  )
}
