import { REPORT_UNMEASURED } from '../words/en/report-unmeasured'
import type { ReportData } from './report-data'

/** What this report cannot say, one sentence each: no figure is better than one nobody measured. */
export function unmeasured(data: ReportData): string[] {
  const { evaluation, grip, trained, recordings } = data
  const found: string[] = []
  if (evaluation === null) {
    found.push(REPORT_UNMEASURED.recognition)
  } else if (evaluation.value.background === null) {
    found.push(REPORT_UNMEASURED.falseActivations)
  }
  if (evaluation !== null && evaluation.value.holdout === 'take') {
    found.push(REPORT_UNMEASURED.newHands)
  }
  if (grip === null) found.push(REPORT_UNMEASURED.grip)
  if (trained === null) found.push(REPORT_UNMEASURED.noModel(data.trainingFailure))
  const made = recordings.filter(({ source }) => source === 'generated' || source === 'simulated')
  if (made.length > 0) {
    found.push(
      made.length === recordings.length
        ? REPORT_UNMEASURED.allGenerated
        : REPORT_UNMEASURED.someGenerated(made.length, recordings.length),
    )
  }
  if (!recordings.some(({ source }) => source === 'board')) {
    found.push(REPORT_UNMEASURED.notByTheBoard)
  }
  return [...found, REPORT_UNMEASURED.partAndHand]
}
