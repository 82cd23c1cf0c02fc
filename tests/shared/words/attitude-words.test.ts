import { describe, expect, test } from 'vitest'
import { fromRotationVector, NO_ROTATION } from '../../../src/shared/attitude/quaternion'
import { driftWords, tipWords } from '../../../src/shared/words/en/attitude-words'

const DEGREE = Math.PI / 180

describe('where the tip points', () => {
  test('is told against the level and against where it began', () => {
    expect(tipWords(NO_ROTATION, [0, 1, 0])).toBe('tip 0° up, 0° right')
    expect(tipWords(fromRotationVector([30 * DEGREE, 0, 0]), [0, 1, 0])).toBe(
      'tip 30° up, 0° right',
    )
    expect(tipWords(fromRotationVector([0, 0, 45 * DEGREE]), [0, 1, 0])).toBe('tip 0° up, 45° left')
  })

  test('has no heading near the vertical', () => {
    expect(tipWords(fromRotationVector([-85 * DEGREE, 0, 0]), [0, 1, 0])).toBe('tip 85° down')
  })
})

describe('drift in words', () => {
  test('tells degrees a second at rest and degrees after a turn, or that they are not known', () => {
    const words = driftWords(
      {
        rest: { dps: 0.34, seconds: 1.2 },
        turn: { turnedDeg: 181.4, seconds: 2.31, errorDeg: 3.04 },
      },
      true,
    ).replaceAll('\u202f', ' ')
    expect(words).toContain('0.34 deg/s')
    expect(words).toContain('181° in all within 2.3 s')
    expect(words).toContain('3.0° off')
    const unknown = driftWords({ rest: null, turn: null }, true)
    expect(unknown.match(/not known/g)).toHaveLength(2)
    expect(driftWords({ rest: null, turn: null }, false)).toContain('No gyroscope')
  })
})
