import type { Plan, Prompt } from '../../collect/plan'

/** A time for people, rounded up: 'about 4 min', 'less than a minute'. */
export function aboutMinutes(ms: number): string {
  return ms < 60_000 ? 'less than a minute' : `about ${Math.ceil(ms / 60_000)}\u202fmin`
}

/** What a prompt is called, as short as it can be read at arm's length. */
export function promptName(plan: Plan, prompt: Prompt): string {
  if (prompt.kind === 'rest') return 'Rest'
  if (prompt.kind === 'background') return 'Anything else'
  return plan.gestures.find(({ gestureId }) => gestureId === prompt.gestureId)?.name ?? ''
}

/** What the hand does in a prompt, one or two sentences. */
export function promptWords(plan: Plan, prompt: Prompt): string {
  if (prompt.kind === 'rest') return 'Lower the arm and shake it out.'
  if (prompt.kind === 'background') {
    return 'Walk, talk, point, put the phone down and pick it up: everything but the movements of before.'
  }
  const gesture = plan.gestures.find(({ gestureId }) => gestureId === prompt.gestureId)
  return gesture?.words ?? ''
}

const HELD = { left: 'With the left hand', right: 'With the right hand' }

/** How the prop is held for a prompt; empty where it does not matter. */
export function holdWords(plan: Plan, prompt: Prompt): string {
  if (prompt.kind !== 'take') return ''
  const hand = prompt.hand === null ? '' : HELD[prompt.hand]
  if (plan.grip === 'free') return hand === '' ? '' : `${hand}.`
  const mark = 'the screen towards you at the start'
  return hand === '' ? `Hold it with ${mark}.` : `${hand}, ${mark}.`
}

/** Seconds and minutes as they count down: '25 s', '1:05 min'. */
export function countDownText(ms: number): string {
  const seconds = Math.ceil(ms / 1000)
  if (seconds < 60) return `${seconds}\u202fs`
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}\u202fmin`
}

/** What is wrong with a take, in words of somebody who never saw the app. */
export function doubtWords(code: string): string {
  switch (code) {
    case 'nothing-moved':
      return 'The phone did not move.'
    case 'too-short':
      return 'That was very short.'
    case 'clipped':
      return 'That was faster than the prop can measure.'
    case 'gap':
      return 'The sensor paused for a moment.'
    case 'no-gyro':
      return 'This phone does not measure turning.'
    case 'cut-in-two':
      return 'There was a stop in between: make it in one go.'
    case 'unlike':
      return 'That was unlike the others of its kind.'
    default:
      return 'Something is wrong with that one.'
  }
}

export interface PhaseFacts {
  prompt: Prompt
  /** What the prompt is called. */
  name: string
  /** Codes of what is wrong, while it is asked whether to keep the take. */
  doubts: string[]
}

export interface PhaseWords {
  /** For the eye, with the name standing large above. */
  seen: string
  /** For the ear, before it. */
  heard: string
}

/** The line that says what to do now. @param phase name of a session's phase */
export function phaseWords(phase: string, { prompt, name, doubts }: PhaseFacts): PhaseWords {
  const only = (seen: string) => ({ seen, heard: '' })
  switch (phase) {
    case 'waiting':
      return waitingWords(prompt, name)
    case 'ready':
      return { heard: `${name}.`, seen: 'Hold still …' }
    case 'go':
      return { heard: '', seen: `Now: ${name}!` }
    case 'checking':
      return only('Done. Checking …')
    case 'good':
      return only('Good, kept.')
    case 'doubt':
      return { heard: doubts.map(doubtWords).join(' '), seen: 'Once more?' }
    case 'resting':
      return only('Rest.')
    case 'background':
      return only('Recording. Move as you like.')
    case 'paused':
      return only('Paused. Nothing is recorded.')
    case 'no-readings':
      return only('The sensor is silent.')
    case 'not-stored':
      return only('Not stored yet. What was kept before is safe.')
    default:
      return only('The session is over.')
  }
}

function waitingWords(prompt: Prompt, name: string): PhaseWords {
  if (prompt.kind === 'rest') return { heard: '', seen: 'Time for a rest.' }
  if (prompt.kind === 'background') {
    return { heard: 'Last of all: anything but the movements.', seen: 'Tap Start.' }
  }
  const { number, of } = prompt
  return { heard: `Next: ${name}, ${number} of ${of}.`, seen: 'Tap Start, move at the sound.' }
}
