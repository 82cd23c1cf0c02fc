import { CUTS, cutRates } from '../../shared/evaluation/cut-rates'
import type { Evaluation } from '../../shared/model/evaluation'
import { HAND_MARGIN_MS } from '../../shared/training/press'
import { PROOF } from '../../shared/words/en/proof'
import { CUT_WORDS } from '../../shared/words/en/trade-off-words'
import { RateBar } from '../charts'
import { Section, useApp } from '../common'

/** How the held-out takes were cut out of the stream, before anything was compared. */
export function Cutting({ evaluation }: { evaluation: Evaluation }) {
  const rates = cutRates(evaluation.outcomes)
  const library = useApp().library.current.value
  const byButton = library?.training.segmentation === 'button'
  return (
    <Section title={PROOF.cutOutOfTheStream}>
      <p class="small quiet">
        {byButton ? PROOF.cuttingByButton(HAND_MARGIN_MS) : PROOF.cuttingLead}
      </p>
      {CUTS.map((cut) => (
        <RateBar key={cut} name={CUT_WORDS[cut]} rate={rates[cut]} />
      ))}
    </Section>
  )
}
