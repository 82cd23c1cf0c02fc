import { effect } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { RecordState } from '../../state/app'
import { cue } from './cues'

/** Sounds and vibrates when recording starts and stops, and when a movement was cut. */
export function useCues(record: RecordState): void {
  useEffect(() => {
    let before = record.phase.peek()
    let offered = record.offered.peek()
    return effect(() => {
      const phase = record.phase.value
      const offer = record.offered.value
      const recording = phase === 'holding' || phase === 'hands-free' || phase === 'background'
      const recorded = before === 'holding' || before === 'hands-free' || before === 'background'
      if (recording && !recorded) cue('start')
      else if (recorded && !recording) cue('stop')
      else if (phase === 'hands-free' && offer !== null && offer !== offered) cue('cut')
      before = phase
      offered = offer
    })
  }, [record])
}
