import { beforeAll, describe, expect, it } from 'vitest'
import { generateDemoLibrary, seededUuid } from '../../../src/shared/demo/demo-library'
import type { FullLibrary } from '../../../src/shared/model/library'
import { sampleCount } from '../../../src/shared/model/sample'
import { createRandom } from '../../../src/shared/statistics/random'

let full: FullLibrary

beforeAll(async () => {
  full = await generateDemoLibrary(20)
})

describe('demo library', () => {
  it('has eight takes of eight gestures by six testers, one of them left-handed', () => {
    const takes = full.recordings.flatMap(({ recording }) =>
      recording.kind === 'take' ? [recording] : [],
    )
    expect(takes).toHaveLength(8 * 8 * 6)
    for (const gesture of full.library.gestures) {
      for (const code of ['T01', 'T02', 'T03', 'T04', 'T05', 'T06']) {
        const own = takes.filter((t) => t.gestureId === gesture.id && t.testerCode === code)
        expect(own).toHaveLength(8)
      }
    }
    const left = takes.filter(({ hand }) => hand === 'left')
    expect(new Set(left.map(({ testerCode }) => testerCode)).size).toBe(1)
  })

  it('has more than ten minutes of background, some by every tester', () => {
    const backgrounds = full.recordings.flatMap(({ recording }) =>
      recording.kind === 'background' ? [recording] : [],
    )
    const totalMs = backgrounds.reduce((sum, { durationMs }) => sum + durationMs, 0)
    expect(totalMs).toBeGreaterThan(600_000)
    expect(new Set(backgrounds.map(({ testerCode }) => testerCode)).size).toBe(6)
  })

  it('says everywhere that it was generated and belongs together', () => {
    expect(full.library.generated).toBe(true)
    for (const { recording, samples } of full.recordings) {
      expect(recording.source).toBe('generated')
      expect(recording.libraryId).toBe(full.library.id)
      expect(recording.deletedAt).toBeNull()
      expect(recording.sampleCount).toBe(sampleCount(samples))
      expect(samples.values.length).toBe(6 * sampleCount(samples))
      expect(recording.durationMs).toBe(samples.tMs[samples.tMs.length - 1])
    }
    const ids = new Set(full.recordings.map(({ recording }) => recording.id))
    expect(ids.size).toBe(full.recordings.length)
  })

  it('has times from 0 on that never decrease, 60 Hz by median, with jitter and lost readings', () => {
    const intervals: number[] = []
    for (const { samples } of full.recordings) {
      expect(samples.tMs[0]).toBe(0)
      for (let i = 1; i < samples.tMs.length; i++) {
        const interval = samples.tMs[i] - samples.tMs[i - 1]
        expect(interval).toBeGreaterThanOrEqual(0)
        intervals.push(interval)
      }
    }
    intervals.sort((a, b) => a - b)
    const at = (share: number) => intervals[Math.floor(share * (intervals.length - 1))]
    expect(at(0.5)).toBeCloseTo(1000 / 60, 0)
    expect(at(0.95) - at(0.05)).toBeGreaterThan(0.5)
    const lost = intervals.filter((interval) => interval > 30).length / intervals.length
    expect(lost).toBeGreaterThan(0.001)
    expect(lost).toBeLessThan(0.006)
  })

  it('is rounded to steps of 0.1 m/s² and 0.1 deg/s, as browsers do', () => {
    for (const { samples } of full.recordings) {
      for (const value of samples.values) {
        if (Math.fround(Math.round(value * 10) / 10) !== value) {
          expect.fail(`${value} is no multiple of 0.1`)
        }
      }
    }
  })

  it('begins every take at rest: one g within 4 % and turning by less than 12 deg/s', () => {
    for (const { recording, samples } of full.recordings) {
      if (recording.kind !== 'take') continue
      const mean = [0, 0, 0, 0, 0, 0]
      for (let i = 0; i < 40; i++) {
        for (let k = 0; k < 6; k++) mean[k] += samples.values[6 * i + k] / 40
      }
      expect(Math.abs(Math.hypot(...mean.slice(0, 3)) / 9.80665 - 1)).toBeLessThan(0.04)
      expect(Math.hypot(...mean.slice(3))).toBeLessThan(12)
    }
  })

  it('is the same to the bit for the same seed, ids and times included', async () => {
    const again = await generateDemoLibrary(20)
    expect(again.library).toEqual(full.library)
    for (const [index, { recording, samples }] of full.recordings.entries()) {
      const twin = again.recordings[index]
      expect(twin.recording).toEqual(recording)
      expect(
        Buffer.from(twin.samples.values.buffer).equals(Buffer.from(samples.values.buffer)),
      ).toBe(true)
      expect(Buffer.from(twin.samples.tMs.buffer).equals(Buffer.from(samples.tMs.buffer))).toBe(
        true,
      )
    }
  })

  it('is another one for another seed', async () => {
    const other = await generateDemoLibrary(21)
    expect(other.library.id).not.toBe(full.library.id)
    expect(other.recordings[1].samples.values).not.toEqual(full.recordings[1].samples.values)
  })

  it('tells its progress to the end and waits for the pause it was given', async () => {
    const seen: number[] = []
    let pauses = 0
    await generateDemoLibrary(
      1,
      ({ done, total }) => seen.push(done / total),
      async () => {
        pauses++
      },
    )
    expect(seen.at(-1)).toBe(1)
    expect(seen).toEqual([...seen].sort((a, b) => a - b))
    expect(pauses).toBe(seen.length)
    expect(pauses).toBeGreaterThan(40)
  })

  it('has ids shaped as RFC 9562 UUIDs of version 4', () => {
    const random = createRandom(1)
    for (let i = 0; i < 50; i++) {
      expect(seededUuid(random)).toMatch(
        /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
      )
    }
  })
})
