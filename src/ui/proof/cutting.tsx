import { CUTS, cutRates } from '../../shared/evaluation/cut-rates'
import type { Evaluation } from '../../shared/model/evaluation'
import { PROOF } from '../../shared/words/en/proof'
import { CUT_WORDS } from '../../shared/words/en/trade-off-words'
import { RateBar } from '../charts'
import { Section } from '../common'

/** How the held-out takes were cut out of the stream, before anything was compared. */
export function Cutting({ evaluation }: { evaluation: Evaluation }) {
  const rates = cutRates(evaluation.outcomes)
  return (
    <Section title={PROOF.cutOutOfTheStream}>
      <p class="small quiet">{PROOF.cuttingLead}</p>
      {CUTS.map((cut) => (
        <RateBar key={cut} name={CUT_WORDS[cut]} rate={rates[cut]} />
      ))}
    </Section>
  )
}
