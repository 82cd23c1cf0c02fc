import { expect, it } from 'vitest'
import { pointAtSample, sampleOfPoint } from '../../../src/shared/replay/sample-of-point'

it('a point is the middle of its part where samples are more, and between samples where they are fewer', () => {
  const long = { start: 100, end: 148 }
  // 48 samples on 24 points: point 0 is the mean of samples 100 and 101.
  expect(sampleOfPoint(0, 24, long)).toBe(100.5)
  expect(sampleOfPoint(23, 24, long)).toBe(146.5)
  const short = { start: 10, end: 21 }
  expect(sampleOfPoint(0, 21, short)).toBe(10)
  expect(sampleOfPoint(20, 21, short)).toBe(20)
  expect(sampleOfPoint(10, 21, short)).toBe(15)
})

it('a sample belongs to the last point at or before it', () => {
  const segment = { start: 100, end: 148 }
  expect(pointAtSample(99, 24, segment)).toBe(-1)
  expect(pointAtSample(100, 24, segment)).toBe(0)
  expect(pointAtSample(103, 24, segment)).toBe(1)
  expect(pointAtSample(500, 24, segment)).toBe(23)
})
