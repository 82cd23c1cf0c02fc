import type { Remedy } from '../../grip/grip-tolerance'

const REMEDIES: Record<Remedy, string> = { mark: 'mark', gravity: 'gravity', copies: 'copies' }

/** What training, measuring and comparing are doing. */
export const WORK_PROGRESS = {
  conditioning: 'conditioning the recordings',
  counting: 'counting',
  cuttingTakes: 'Cutting takes',
  comparingTakesOf: (gesture: string) => `Comparing takes of ${gesture}`,
  finding: 'finding where movements start and end',
  comparingWays: 'comparing ways to compare',
  choosingTemplates: 'choosing templates',
  fittingKernel: 'fitting kernel features',
  thresholds: 'learning thresholds',
  holdingOutAll: (heldOut: string) => `holding out ${heldOut}: all takes`,
  holdingOutSome: ({
    heldOut,
    count,
    axis,
  }: {
    heldOut: string
    count: number
    axis: 'takes' | 'testers'
  }) => `holding out ${heldOut}: ${count} ${axis === 'takes' ? 'takes a gesture' : 'testers'}`,
  views: {
    recogniser: 'comparing takes with takes',
    shape: 'comparing paths without size and speed',
    accelerometer: 'comparing without the gyroscope',
    unaligned: 'comparing without alignment',
  },
  holdingOut: (heldOut: string) => `holding out ${heldOut}`,
  trying: (setting: string) => `trying ${setting}`,
  trainingFor: (heldOut: string, remedy: Remedy) =>
    `holding out ${heldOut}: training, ${REMEDIES[remedy]}`,
  turning: (heldOut: string, { rollDeg, tiltDeg }: { rollDeg: number; tiltDeg: number }) =>
    `holding out ${heldOut}: ${tiltDeg === 0 ? `roll ${rollDeg}°` : `tilt ${tiltDeg}°`}`,
  generatingTakesOf: (tester: string) => `Generating takes of ${tester}`,
}
