import type { SensorSetting } from '../../decide/sensor-decision'

/** Narrow no-break space between a number and its unit. */
const UNIT = '\u202f'

/** One setting in a few words, such as '26 Hz, ±8 g, 16 bit, six axes'. */
export function settingWords(setting: SensorSetting): string {
  const { rateHz, rangeG, bits, gyro } = setting
  const noise = noiseWords(setting)
  return [
    `${rateHz}${UNIT}Hz`,
    `±${rangeG}${UNIT}g`,
    `${bits}${UNIT}bit`,
    gyro ? 'six axes' : 'accelerometer alone',
    ...(noise === '' ? [] : [noise]),
  ].join(', ')
}

/** Noise added to the recordings; empty for none. */
export function noiseWords({ accelNoise, gyroNoise }: SensorSetting): string {
  if (accelNoise === 0 && gyroNoise === 0) return ''
  return `noise of ${accelNoise}${UNIT}µg/√Hz and ${gyroNoise}${UNIT}mdeg/s/√Hz added`
}
