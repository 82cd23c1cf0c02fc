import { describe, expect, it } from 'vitest'
import { describeMovement } from '../../src/recording/movement'
import { judgeClipping, judgeGaps, judgeMovement, judgeTake } from '../../src/recording/quality'
import { AXES, type SampleBlock, STANDARD_GRAVITY_MPS2 } from '../../src/shared/model/sample'
import { exampleLibrary } from '../storage/examples'

const { target } = exampleLibrary()
const PHONE = { hasGyro: true, accelSign: 1 as const }

/** Three seconds at 60 Hz, flat at rest, with a turn about x from 1 s on. */
function block(turnMs: number, turnDps = 120): SampleBlock {
  const count = 180
  const samples = { tMs: new Float64Array(count), values: new Float32Array(count * AXES) }
  for (let i = 0; i < count; i++) {
    const tMs = (i * 1000) / 60
    samples.tMs[i] = tMs
    samples.values[i * AXES + 2] = STANDARD_GRAVITY_MPS2
    if (tMs >= 1000 && tMs <= 1000 + turnMs) samples.values[i * AXES + 3] = turnDps
  }
  return samples
}

const codes = (samples: SampleBlock, device = PHONE) =>
  judgeTake(samples, device, target).map(({ code }) => code)

describe('the quality of a take', () => {
  it('is good when a movement of half a second is all there', () => {
    expect(judgeTake(block(500), PHONE, target)).toEqual([
      { code: 'good', text: '0.5 s of movement up to 120 deg/s in 180 samples, no gaps.' },
    ])
  })

  it('names a movement of 100 ms too short, with figures', () => {
    expect(judgeTake(block(100), PHONE, target)).toEqual([
      {
        code: 'too-short',
        text: 'Moved for 100 ms only; 200 ms are needed to compare it.',
      },
    ])
  })

  it('sees no movement in a hand that trembles at 10 deg/s', () => {
    expect(codes(block(500, 10))).toEqual(['nothing-moved'])
  })

  it('says that angular rate is missing even when the rest is good', () => {
    expect(codes(block(500), { ...PHONE, hasGyro: false })).toEqual(['no-gyro'])
  })

  it('is never good and something else at once', () => {
    const samples = block(500)
    for (let i = 90; i < 180; i++) samples.tMs[i]! += 150
    expect(codes(samples, { ...PHONE, hasGyro: false })).toEqual(['gap', 'no-gyro'])
  })
})

describe('clipping', () => {
  it('is counted on the target, in values that its sensor could not have shown', () => {
    // ±1,000 deg/s by sensitivity: 32,767 counts of 35 mdps are 1,146.8 deg/s.
    expect(judgeClipping(block(500, 1100), PHONE, target)).toBeNull()
    const clipped = judgeClipping(block(500, 1400), PHONE, target)
    const [, values, all] = /^(\d+) of (\d+) values are beyond/.exec(clipped!.text)!
    // Half a second at 104 Hz is 52 samples of one axis; resampling may soften an edge sample.
    expect(Number(values)).toBeGreaterThanOrEqual(49)
    expect(Number(values)).toBeLessThanOrEqual(55)
    expect(Number(all) % AXES).toBe(0)
  })

  it('uses the range of the axis that the mounting turns the movement to, not of the phone', () => {
    const turned = { ...target, gyro: { fullScale: 250, nanoPerLsb: 8_750_000 } }
    expect(judgeClipping(block(500, 280), PHONE, turned)).toBeNull()
    expect(judgeClipping(block(500, 300), PHONE, turned)?.code).toBe('clipped')
  })
})

describe('gaps', () => {
  it('are counted with the longest in milliseconds', () => {
    const samples = block(500)
    for (let i = 60; i < 180; i++) samples.tMs[i]! += 120
    for (let i = 120; i < 180; i++) samples.tMs[i]! += 300
    expect(judgeGaps(samples)?.text).toBe(
      '2 gaps without readings, the longest 317 ms: the movement in it is lost.',
    )
  })

  it('are not made of a single lost reading', () => {
    const samples = block(500)
    for (let i = 60; i < 180; i++) samples.tMs[i]! += 1000 / 60
    expect(judgeGaps(samples)).toBeNull()
  })
})

describe('movement', () => {
  it('is seen by acceleration alone when there is no gyroscope', () => {
    const samples = block(0, 0)
    for (let i = 60; i < 90; i++) samples.values[i * AXES] = 4 * Math.sin((i - 60) / 2)
    const movement = describeMovement(samples)
    expect(movement.fastestDps).toBe(0)
    expect(movement.durationMs).toBeGreaterThan(400)
    expect(judgeMovement(movement)).toBeNull()
  })

  it('is not seen in the constant pull of gravity in another pose', () => {
    const samples = block(0, 0)
    for (let i = 0; i < 180; i++) samples.values.set([6.9, 0, -6.9], i * AXES)
    expect(describeMovement(samples).durationMs).toBe(0)
  })

  it('of no samples is none', () => {
    const nothing = { tMs: new Float64Array(0), values: new Float32Array(0) }
    expect(describeMovement(nothing)).toEqual({
      durationMs: 0,
      startMs: 0,
      endMs: 0,
      fastestDps: 0,
      strongestMps2: 0,
    })
  })
})
