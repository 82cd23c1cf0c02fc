import type { MotionSample } from '../../src/sensors/motion-source'

export type Six = [ax: number, ay: number, az: number, gx: number, gy: number, gz: number]

/** Samples at 60 Hz whose values `at` gives by number. */
export function samplesOf(count: number, at: (i: number) => Six): MotionSample[] {
  return Array.from({ length: count }, (_, i) => {
    const [ax, ay, az, gx, gy, gz] = at(i)
    return { tMs: (i * 1000) / 60, ax, ay, az, gx, gy, gz }
  })
}

/** A phone at rest with gravity along a direction; `noise` wobbles every axis a little. */
export function resting(ax: number, ay: number, az: number, count = 60, noise = 0.1) {
  return samplesOf(count, (i) => {
    const wobble = i % 2 === 0 ? noise / 2 : -noise / 2
    return [ax + wobble, ay - wobble, az + wobble, wobble, wobble, -wobble]
  })
}
