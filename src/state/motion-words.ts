import type { MotionStatus } from '../sensors/motion-source'
import { MOTION } from '../shared/words/en/motion'

export interface MotionWords {
  /** What was seen. */
  seen: string
  /** What to do about it. */
  todo: string
}

/** Words for every status in which no readings come; null when there is nothing to say. */
export function motionWords(status: MotionStatus): MotionWords | null {
  switch (status) {
    case 'denied':
      return MOTION.denied
    case 'insecure':
      return MOTION.insecure
    case 'no-sensor':
      return MOTION.noSensor
    case 'lost':
      return MOTION.lost
    default:
      return null
  }
}

export function motionSentence(status: MotionStatus): string {
  const words = motionWords(status)
  return words === null ? MOTION.notRunning : `${words.seen} ${words.todo}`
}
