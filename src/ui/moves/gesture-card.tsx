import type { GestureCounts } from '../../shared/present/library-counts'
import { plural } from '../../shared/present/numbers'
import { Card, route } from '../common'
import { GesturePicture } from './gesture-picture'

export function GestureCard({ counts }: { counts: GestureCounts }) {
  const { gesture, takes, testers } = counts
  return (
    <Card href={route('gesture', gesture.id)}>
      <div class="gesture-card">
        <GesturePicture gesture={gesture} />
        <div>
          <h2 class="gesture-name">{gesture.name}</h2>
          <p class="quiet small">
            {takes.length === 0
              ? 'no takes yet'
              : `${plural('take', takes.length)}, ${plural('tester', testers.length)}`}
          </p>
        </div>
      </div>
    </Card>
  )
}
