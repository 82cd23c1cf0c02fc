import { useMemo, useState } from 'preact/hooks'
import {
  nearestStep,
  TRADE_OFF_FACTORS,
  type TradeOffPoint,
  tradeOffAt,
  tradeOffCurve,
} from '../../shared/evaluation/trade-off'
import type { BackgroundScore, Evaluation } from '../../shared/model/evaluation'
import { CLAIMS } from '../../shared/present/claims'
import { percent, shortNumber } from '../../shared/words/en/numbers'
import { PROOF } from '../../shared/words/en/proof'
import {
  activationNote,
  claimSentence,
  factorText,
  missedNote,
} from '../../shared/words/en/trade-off-words'
import { Choice, Figure, Section, Slider, useApp } from '../common'
import { TradeOffPlot } from './trade-off-plot'

export interface TradeOffProps {
  evaluation: Evaluation
  stale: boolean
}

/** Misses against false activations, with the threshold factor of the library under the thumb. */
export function TradeOff(props: TradeOffProps) {
  const { library } = useApp()
  const keep = async (thresholdFactor: number) => {
    const training = library.current.value?.training
    if (training !== undefined) await library.update({ training: { ...training, thresholdFactor } })
  }
  return <TradeOffView {...props} keep={keep} />
}

/** @param keep stores the factor once the thumb is let go */
export function TradeOffView({
  evaluation,
  stale,
  keep,
}: TradeOffProps & { keep: (factor: number) => Promise<void> }) {
  const curve = useMemo(
    () => tradeOffCurve(evaluation),
    [evaluation.outcomes, evaluation.background],
  )
  const [moving, setMoving] = useState<number | null>(null)
  const point = tradeOffAt(evaluation, moving ?? evaluation.thresholdFactor)
  return (
    <Section title={PROOF.tradeOffTitle}>
      <p class="small quiet">{PROOF.tradeOffLead}</p>
      {point.background !== null && <TradeOffPlot curve={curve} point={point} />}
      <Slider
        label={PROOF.thresholdFactor}
        value={nearestStep(point.factor)}
        min={0}
        max={TRADE_OFF_FACTORS.length - 1}
        text={factorText(point.factor)}
        onInput={(step) => setMoving(TRADE_OFF_FACTORS[step] ?? 1)}
        onChange={(step) => void keep(TRADE_OFF_FACTORS[step] ?? 1).then(() => setMoving(null))}
      />
      <div class="trade-off-ends small quiet" aria-hidden="true">
        <span>{PROOF.rejectsMore}</span>
        <span>{PROOF.acceptsMore}</span>
      </div>
      <PointFigures point={point} />
      {point.background !== null && <Claim background={point.background} />}
      <p class="small quiet">{PROOF.factorHint(stale)}</p>
    </Section>
  )
}

function PointFigures({ point }: { point: TradeOffPoint }) {
  return (
    <div class="trade-off-figures">
      <Figure
        label={PROOF.missedOrWrong}
        value={percent(point.missed.value)}
        note={missedNote(point)}
      />
      {point.background === null ? (
        <Figure label={PROOF.falseActivations} value={PROOF.notKnown} note={PROOF.notCounted} />
      ) : (
        <Figure
          label={PROOF.falseActivations}
          value={shortNumber(point.background.perHour)}
          unit={PROOF.anHour}
          note={activationNote(point.background)}
        />
      )}
    </div>
  )
}

type Claimed = `${(typeof CLAIMS)[number]}`

function Claim({ background }: { background: BackgroundScore }) {
  const [claimed, setClaimed] = useState<Claimed>('1')
  return (
    <>
      <Choice
        legend={PROOF.claimLabel}
        value={claimed}
        options={CLAIMS.map((rate) => ({ value: `${rate}` as Claimed, text: `${rate}` }))}
        onChange={setClaimed}
      />
      <p>{claimSentence(background, Number(claimed))}</p>
    </>
  )
}
