import type { BackgroundScore, Evaluation, Rate } from '../model/evaluation'
import { poissonUpper } from '../statistics/poisson'
import { wilson } from '../statistics/wilson'
import { isAnswered } from './at-factor'
import { backgroundAt } from './background-score'

/** What one threshold factor costs on either side. */
export interface TradeOffPoint {
  factor: number
  /** Held-out takes not answered with their own gesture: rejected, confused or never cut out. */
  missed: Rate
  /** False activations at this factor; null without background. */
  background: BackgroundScore | null
}

const STEPS_AN_OCTAVE = 20

/** Factors of the curve, from 0.5 to 2 in equal ratios; 1 is among them. */
export const TRADE_OFF_FACTORS: readonly number[] = Array.from(
  { length: 2 * STEPS_AN_OCTAVE + 1 },
  (_, step) => Number((2 ** (step / STEPS_AN_OCTAVE - 1)).toFixed(3)),
)

/** Place of the factor on the curve that is nearest in ratio. */
export function nearestStep(factor: number): number {
  const step = Math.round((Math.log2(factor) + 1) * STEPS_AN_OCTAVE)
  return Math.min(TRADE_OFF_FACTORS.length - 1, Math.max(0, step))
}

/**
 * Misses and false activations at a factor, of the same held-out takes and background. A greater
 * factor never misses more and never activates less.
 */
export function tradeOffAt(
  { outcomes, background }: Pick<Evaluation, 'outcomes' | 'background'>,
  factor: number,
): TradeOffPoint {
  const right = outcomes.filter(
    ({ nearest, truth, acceptedFrom }) => nearest === truth && isAnswered(acceptedFrom, factor),
  )
  return {
    factor,
    missed: wilson(outcomes.length - right.length, outcomes.length),
    background: background && backgroundAt(background, factor),
  }
}

/** The whole curve, by rising factor. */
export function tradeOffCurve(evaluation: Evaluation): TradeOffPoint[] {
  return TRADE_OFF_FACTORS.map((factor) => tradeOffAt(evaluation, factor))
}

/**
 * Hours of background without a further activation after which fewer than `perHour` can be claimed
 * with one-sided 95 % confidence; 0 where that holds already. Activations seen so far keep counting.
 */
export function hoursMissingToClaim(
  { activations, hours }: Pick<BackgroundScore, 'activations' | 'hours'>,
  perHour: number,
): number {
  return Math.max(0, poissonUpper(activations) / perHour - hours)
}
