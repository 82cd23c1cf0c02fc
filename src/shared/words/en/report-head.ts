import type { BackgroundScore, Holdout, Rate } from '../../model/evaluation'
import { countOf, durationText, percentRange, plural, shortNumber } from './numbers'

interface Holdings {
  gestures: number
  takes: number
  testers: number
  backgroundMs: number
}

/** The head of the report: what it is of, and the answer first. */
export const REPORT_HEAD = {
  title: (library: string) => `${library}: recognition report`,
  holds: ({ gestures, takes, testers, backgroundMs }: Holdings) => {
    const background = backgroundMs > 0 ? `, ${durationText(backgroundMs)} of background` : ''
    return `Recognition report: ${plural('gesture', gestures)}, ${plural('take', takes)} of ${plural('tester', testers)}${background}.`
  },
  madeAt: (instant: string) => `Made ${instant}.`,
  generated: 'Generated library: made by the app from a seed, not by people.',
  unmeasured: 'Not measured',
  understood: 'Held-out takes understood',
  notMeasured: 'not measured',
  ofTakes: (accuracy: Rate, holdout: Holdout) =>
    `${countOf(accuracy)} takes, ${holdout === 'tester' ? 'testers held out' : 'takes held out'}; 95 % interval ${percentRange(accuracy.low, accuracy.high)}`,
  falseActivations: 'False activations',
  notKnown: 'not known',
  noBackground: 'no background recorded',
  anHour: (perHour: number) => `${shortNumber(perHour)} an hour`,
  inHours: ({ activations, hours, low, high }: BackgroundScore) =>
    `${activations} in ${shortNumber(hours)} h; 95 % interval ${shortNumber(low)} to ${shortNumber(high)} (exact Poisson)`,
}
