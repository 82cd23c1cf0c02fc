/** What is told of a take as it is made, and why none is. */
export const RECORDING = {
  nothingOffered: 'There is no take to keep.',
  nothingHeldBack: 'There is no recording that waits to be stored.',
  nothingMoved: (fastestDps: number, strongestMps2: number) =>
    `Nothing moved: at most ${fastestDps.toFixed(0)} deg/s and ${strongestMps2.toFixed(1)} m/s² of change.`,
  tooShort: (durationMs: number, shortestMs: number) =>
    `Moved for ${durationMs.toFixed(0)} ms only; ${shortestMs} ms are needed to compare it.`,
  clipped: (clipped: number, values: number, accelG: number, gyroDps: number) =>
    `${clipped} of ${values} values are beyond the target's ±${accelG} g or ±${gyroDps} deg/s and are cut off there.`,
  gapsSeen: (gaps: number, longestMs: number) =>
    `${gaps === 1 ? '1 gap' : `${gaps} gaps`} without readings, the longest ${longestMs.toFixed(0)} ms: the movement in it is lost.`,
  noGyroscope:
    'This phone sends no angular rate, which most gestures are told apart by: use another phone.',
  good: (durationS: number, fastestDps: number, samples: number) =>
    `${durationS.toFixed(1)} s of movement up to ${fastestDps.toFixed(0)} deg/s in ${samples} samples, no gaps.`,
  leftOutShort: 'A movement was too short to be a take and was left out.',
  leftOutLong: 'A movement did not end in time and was left out: rest before and after each one.',
  notStarted: 'The sensors are not started: tap to start them.',
  starting: 'The sensors are just starting: try again in a second.',
  denied: 'The browser does not give out motion readings: allow them in its site settings.',
  insecure: 'Motion readings need HTTPS or localhost: open the page by its https address.',
  noSensor: 'No motion readings come on this device: use a phone, or the simulated one.',
  lost: 'The motion readings stopped coming: bring the page to the front, or start it again.',
  busy: 'Something is being recorded already: stop it first.',
  noSource: 'There is no motion source: pick one.',
}
