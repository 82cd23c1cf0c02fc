import { type PlaceStep, placeStep } from '../../shared/present/place-step'
import { useApp } from './app-context'

/** The next useful step from a place, by takes and by the last evaluation while it is fresh. */
export function usePlaceStep(place: 'try' | 'proof' | 'prop'): PlaceStep | null {
  const { library, evaluation } = useApp()
  const job = evaluation.value
  const takes = library.recordings.value.filter(({ kind }) => kind === 'take').length
  return placeStep(place, takes, job.state === 'done' && !job.stale ? job.value : null)
}
