import { MOVES } from '../../shared/words/en/moves'
import { Card, Icon } from '../common'

export interface BackgroundCardProps {
  count: number
  totalMs: number
}

/** What is no gesture: how much of it there is to count false activations in. */
export function BackgroundCard({ count, totalMs }: BackgroundCardProps) {
  return (
    <Card href="#/background">
      <div class="gesture-card">
        <div class="gesture-picture quiet">
          <Icon name="walk" />
        </div>
        <div>
          <h2 class="gesture-name">{MOVES.background}</h2>
          <p class="quiet small">
            {count === 0 ? MOVES.noneYet : MOVES.backgroundAmount(totalMs, count)}
          </p>
        </div>
      </div>
    </Card>
  )
}
