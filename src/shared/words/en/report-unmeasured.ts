import { plural } from './numbers'

/** What the report cannot say, a sentence each. */
export const REPORT_UNMEASURED = {
  recognition: 'Recognition was not measured: no takes were held out. Measure on Proof.',
  falseActivations: 'False activations are not known: no background was recorded.',
  newHands: 'How it does for hands it has never met was not measured: takes were held out.',
  grip: 'Grip tolerance was not measured.',
  noModel: (why: string) => `There is no model: ${why}`,
  allGenerated: 'No hand moved: every recording is generated or simulated.',
  someGenerated: (made: number, recordings: number) =>
    `No hand moved for ${plural('recording', made)} of ${recordings}: they are generated or simulated.`,
  notByTheBoard:
    'Nothing here was recorded by the board itself: a phone has another mass and grip, and reads up to 25 to 30 Hz of movement.',
  partAndHand:
    'Currents, times on the real part, brightness of the LED and comfort in the hand were not measured; where they appear they are estimates.',
}
