import type { Evaluation, Holdout } from '../../model/evaluation'
import { plural } from './numbers'

/** What a way of holding out answers, in one sentence. */
export const HOLDOUT_WORDS: Record<Holdout, { name: string; sentence: string }> = {
  tester: {
    name: 'Testers',
    sentence:
      'Each tester in turn is left out of training and then tested: what a new hand will see.',
  },
  take: {
    name: 'Takes',
    sentence:
      'Some takes of every tester are left out: what hands already in the training will see.',
  },
}

/** Doubts that the numbers alone do not show; empty when there are none. */
export function evaluationWarnings(evaluation: Evaluation): string[] {
  const warnings: string[] = []
  if (evaluation.testers.length < 2) {
    warnings.push(
      'One tester only: this says nothing about other hands. Ask a second tester for takes.',
    )
  } else if (evaluation.holdout === 'take') {
    warnings.push('The same testers are in training and test: a new hand will do worse.')
  }
  const thin = evaluation.scores.filter((score) => score.recall.n < THIN_TAKES)
  if (thin.length > 0) {
    const names = thin.map((score) => score.name).join(', ')
    warnings.push(`Fewer than ${THIN_TAKES} takes tested: ${names}. The intervals are wide.`)
  }
  if (evaluation.gestures.length < 2) {
    warnings.push(
      'One gesture only: with nothing to confuse it with, only its rejects were counted. Add a second gesture.',
    )
  }
  if (evaluation.background === null) {
    warnings.push('No background recording: false activations are not known.')
  }
  return warnings
}

/** 'Held out: measured on 240 takes of 5 testers.' */
export function measuredSentence(evaluation: Evaluation): string {
  const takes = plural('take', evaluation.accuracy.n)
  return `Held out: measured on ${takes} of ${plural('tester', evaluation.testers.length)}.`
}

const THIN_TAKES = 10
