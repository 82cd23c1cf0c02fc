import type { Plan, Prompt } from '../collect/plan'

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

/** How the prop is held for a prompt; empty where it does not matter. */
export function holdWords(plan: Plan, prompt: Prompt): string {
  if (prompt.kind !== 'take') return ''
  const hand = prompt.hand === null ? '' : `With the ${prompt.hand} hand`
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
