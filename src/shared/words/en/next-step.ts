import type { Rate } from '../../model/evaluation'
import { countOf, plural } from './numbers'

/** The one thing worth doing next in a library. */
export const NEXT_STEP = {
  backup: (unsaved: number) =>
    `${plural('recording', unsaved)} are on this phone only. Testers have gone home; a file elsewhere keeps what they gave.`,
  noGestures: 'No gestures yet. Name the first movement the prop shall know.',
  alone: (gesture: string) =>
    `${gesture} is alone: with nothing to confuse it with, nothing can be measured. Add a second gesture.`,
  background:
    'Without 2 minutes of walking and talking, nobody knows how often the prop answers by mistake.',
  oneTester: (tester: string | undefined) =>
    `Every take is by ${tester ?? 'one tester'}. A second tester shows whether another hand is understood.`,
  noTakes: (gesture: string, enough: number) =>
    `${gesture} has no takes yet; ${enough} are enough to begin.`,
  fewTakes: ({ gesture, takes, enough }: { gesture: string; takes: number; enough: number }) =>
    `${gesture} has ${plural('take', takes)}; ${enough} are enough to begin.`,
  measure: 'Takes are there. Measure how well held-out testers are understood.',
  tryIt: (accuracy: Rate) =>
    `${countOf(accuracy)} held-out takes were understood. Move the phone and watch it decide.`,
}
