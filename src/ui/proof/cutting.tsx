import { CUTS, cutRates } from '../../shared/evaluation/cut-rates'
import type { Evaluation } from '../../shared/model/evaluation'
import { CUT_WORDS } from '../../shared/words/en/trade-off-words'
import { RateBar } from '../charts'
import { Section } from '../common'

/** How the held-out takes were cut out of the stream, before anything was compared. */
export function Cutting({ evaluation }: { evaluation: Evaluation }) {
  const rates = cutRates(evaluation.outcomes)
  return (
    <Section title="Cut out of the stream">
      <p class="small quiet">
        A take should be found as one movement. Of a split one the longest piece decides; missed,
        too long and too short ones are answered with none. With 95 % Wilson intervals.
      </p>
      {CUTS.map((cut) => (
        <RateBar key={cut} name={CUT_WORDS[cut]} rate={rates[cut]} />
      ))}
    </Section>
  )
}
