/** Why the sign of gravity could not be told. */
export const SENSOR_TROUBLE = {
  tilted: (tiltDeg: number) =>
    `The phone is tilted by ${tiltDeg.toFixed(0)} degrees: lay it on a table with the screen up and try again.`,
  tooFewReadings: (readings: number, durationMs: number) =>
    `Only ${readings} readings in ${durationMs} ms came: leave the phone lying for a second longer.`,
  moved: (accelSpread: number, gyroSpread: number) =>
    `The phone moved (readings vary by ${accelSpread.toFixed(1)} m/s² and ${gyroSpread.toFixed(0)} deg/s): take your hand off and try again.`,
  notGravity: (readMps2: number) =>
    `At rest the phone reads ${readMps2.toFixed(1)} m/s² where gravity is 9.8: its accelerometer cannot be trusted, try another phone.`,
}
