import type { Show } from '../../stage/show'
import type { Outcome } from '../../stage/turn'
import { plural, UNIT_SPACE } from './numbers'

/** The one small line of a show: what is gone and what happens; empty while all is well. */
export function showLine(show: Show): string {
  if (show.phase === 'starting') return 'Starting …'
  if (show.phase === 'mending') {
    if (show.gone === 'sensor') return 'The motion sensor is silent. Listening for it.'
    const again = show.tries === 0 ? '' : ` Try ${show.tries + 1}.`
    return `The recogniser stopped. Starting it again.${again}`
  }
  if (show.phase === 'on' && show.outageMs !== null)
    return `Back after ${outageText(show.outageMs)}.`
  return ''
}

function outageText(ms: number): string {
  const seconds = Math.max(1, Math.round(ms / 1000))
  if (seconds < 120) return `${seconds}${UNIT_SPACE}s`
  return `${Math.round(seconds / 60)}${UNIT_SPACE}min`
}

/**
 * What a visitor is told after a movement.
 * @param asked name of the gesture on the card
 * @param answered name of the gesture recognised
 */
export function outcomeLine(outcome: Outcome, asked: string, answered: string | null): string {
  switch (outcome) {
    case 'right':
      return asked
    case 'other':
      return `That was ${answered ?? 'another movement'}.`
    case 'none':
      return 'Not one of these.'
    case 'late':
      return 'No movement seen.'
  }
}

/** Turns of visitors: how many, and how many were what the card asked for. */
export function turnsLine(asked: number, right: number): string {
  return `${plural('turn', asked)} of visitors, ${right} as asked`
}
