import type { Prompt } from '../../shared/collect/plan'
import type { SessionPhase } from '../../state/session'

/** The line that is read and spoken: what to do now. */
export function phaseLine(phase: SessionPhase, prompt: Prompt, name: string): string {
  switch (phase.name) {
    case 'waiting':
      return waitingLine(prompt, name)
    case 'ready':
      return `${name}. Hold still …`
    case 'go':
      return `Now: ${name}!`
    case 'checking':
      return 'Done. Checking …'
    case 'good':
      return 'Good, kept.'
    case 'doubt':
      return `Once more? ${phase.words.join(' ')}`
    case 'resting':
      return 'Rest.'
    case 'background':
      return 'Recording. Move as you like.'
    case 'paused':
      return 'Paused. Nothing is recorded.'
    case 'no-readings':
      return 'The sensor is silent.'
    case 'not-stored':
      return 'Not stored yet. What was kept before is safe.'
    case 'ended':
      return 'The session is over.'
  }
}

function waitingLine(prompt: Prompt, name: string): string {
  if (prompt.kind === 'rest') return 'Time for a rest.'
  if (prompt.kind === 'background') return 'Last of all: everything but the movements. Tap Start.'
  const { number, of } = prompt
  return `Next: ${name}, ${number} of ${of}. Tap Start, and move at the sound.`
}
