import { plural } from '../words/en/numbers'
import type { ReportData } from './report-data'

/** What this report cannot say, one sentence each: no figure is better than one nobody measured. */
export function unmeasured(data: ReportData): string[] {
  const { evaluation, grip, trained, recordings } = data
  const found: string[] = []
  if (evaluation === null) {
    found.push('Recognition was not measured: no takes were held out. Measure on Proof.')
  } else if (evaluation.value.background === null) {
    found.push('False activations are not known: no background was recorded.')
  }
  if (evaluation !== null && evaluation.value.holdout === 'take') {
    found.push('How it does for hands it has never met was not measured: takes were held out.')
  }
  if (grip === null) found.push('Grip tolerance was not measured.')
  if (trained === null) found.push(`There is no model: ${data.trainingFailure}`)
  const made = recordings.filter(({ source }) => source === 'generated' || source === 'simulated')
  if (made.length > 0) {
    found.push(
      made.length === recordings.length
        ? 'No hand moved: every recording is generated or simulated.'
        : `No hand moved for ${plural('recording', made.length)} of ${recordings.length}: they are generated or simulated.`,
    )
  }
  if (!recordings.some(({ source }) => source === 'board')) {
    found.push(
      'Nothing here was recorded by the board itself: a phone has another mass and grip, and reads up to 25 to 30 Hz of movement.',
    )
  }
  return [
    ...found,
    'Currents, times on the real part, brightness of the LED and comfort in the hand were not measured; where they appear they are estimates.',
  ]
}
