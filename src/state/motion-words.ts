import type { MotionStatus } from '../sensors/motion-source'

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
      return {
        seen: 'The browser refused access to the motion sensors.',
        todo: 'Allow motion sensors in the settings of this site, reload the page, and start again.',
      }
    case 'insecure':
      return {
        seen: 'Motion sensors work only over HTTPS, and this page came without it.',
        todo: 'Open the https:// address that "npm run phone" prints, or localhost on this machine.',
      }
    case 'no-sensor':
      return {
        seen: 'No reading came from a motion sensor within a second.',
        todo: 'Try on a phone, or use the simulated phone to look around.',
      }
    case 'lost':
      return {
        seen: 'The motion sensor fell silent.',
        todo: 'Bring the page to the front, keep the screen on, and start the sensor again.',
      }
    default:
      return null
  }
}

export function motionSentence(status: MotionStatus): string {
  const words = motionWords(status)
  return words === null
    ? 'The motion sensor is not running; start it.'
    : `${words.seen} ${words.todo}`
}
