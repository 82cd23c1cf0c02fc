import type { FindingWords } from '../../board/check/finding'

const size = (sensor: 'accel' | 'gyro', value: number) =>
  sensor === 'accel' ? `${(1000 * value).toPrecision(3)} mg` : `${value.toPrecision(3)} °/s`

interface Tone {
  sensor: 'accel' | 'gyro'
  axis: string
  /** g or °/s. */
  amplitude: number
  hz: number
  /** Mains that it may be, Hz; null when none is near. */
  mains: number | null
}

interface TooMuchNoise {
  sensor: 'accel' | 'gyro'
  axis: string
  /** g or °/s rms; and what still passes. */
  sigma: number
  limit: number
}

/** What the board check says of tones and noise at rest. */
export const BOARD_NOISE = {
  hum: ({ sensor, axis, amplitude, hz, mains }: Tone): FindingWords => ({
    title:
      mains === null ? 'A steady tone couples into the sensor' : 'Mains couples into the sensor',
    seen: `${axis} holds a line of ${size(sensor, amplitude)} at ${hz.toFixed(1)} Hz at rest${mains === null ? '' : `, where ${mains} Hz shows at this rate`}.`,
    causes: [
      ...(mains === null
        ? []
        : ['The table or a transformer vibrates, or mains reaches the supply.']),
      'The light’s PWM pulls the supply of the sensor, and its frequency shows folded into this rate.',
      'A motor, a fan or a loudspeaker shakes the table.',
    ],
    next: [
      'Log again with the light off, then with the charger unplugged, then on foam: which one takes it away?',
      'Look at the sensor’s supply with a scope, AC-coupled: ripple at the PWM frequency?',
      'Move the PWM above 20 kHz or give the sensor its own filter (10 Ω and 10 µF).',
    ],
  }),
  noisy: ({ sensor, axis, sigma, limit }: TooMuchNoise): FindingWords => ({
    title: `The ${sensor === 'accel' ? 'accelerometer' : 'gyroscope'} is noisy`,
    seen: `${axis} has ${size(sensor, sigma)} rms at rest; at this rate ${size(sensor, limit)} would still pass.`,
    causes: [
      'The table or the board moved: somebody walked, a cable pulled.',
      'The supply is noisy or its capacitor is missing or far away.',
      'The filter of the sensor is off or wider than half the rate.',
      'A low-power mode averages less.',
    ],
    next: [
      'Log again on foam, without a cable at the board if it can be.',
      'Look at the supply pin with a scope, AC-coupled, short ground: more than 20 mV?',
      'Read back filter and power-mode bits.',
    ],
  }),
}
