import type { Recording } from '../../model/library'
import { durationText, plural } from './numbers'

/** Read of recordings that were left before they were kept, on Moves too. */
export const RECORD_LEFT = {
  cutOff: (kind: Recording['kind'], testerCode: string, lengthMs: number) =>
    `A ${kind === 'take' ? 'take' : 'background recording'} by ${testerCode} was cut off; ${durationText(lengthMs)} of it are there.`,
  notStored: (kind: Recording['kind'], testerCode: string, lengthMs: number) =>
    `A ${kind === 'take' ? 'take' : 'background recording'} by ${testerCode} could not be stored and is held in memory, all ${durationText(lengthMs)} of it: make room, leave this page open, then store it.`,
  storeAgain: 'Store it',
  keepOrDrop: (waiting: number) => `${plural('take', waiting)} made a moment ago: keep or drop?`,
  look: 'Look',
  keep: 'Keep',
  drop: 'Drop',
}
