import type { GestureCounts } from '../../shared/present/library-counts'
import { MOVES } from '../../shared/words/en/moves'
import { Card, route } from '../common'
import { GestureRibbon } from '../ribbon'

export function GestureCard({ counts }: { counts: GestureCounts }) {
  const { gesture, takes, testers } = counts
  return (
    <Card href={route('gesture', gesture.id)}>
      <div class="gesture-card">
        <div class="gesture-picture">
          <GestureRibbon gestureId={gesture.id} size={112} />
        </div>
        <div>
          <h2 class="gesture-name">{gesture.name}</h2>
          <p class="quiet small">
            {takes.length === 0
              ? MOVES.noTakesYet
              : MOVES.takesAndTesters(takes.length, testers.length)}
          </p>
        </div>
      </div>
    </Card>
  )
}
