import { describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import { generateDemoLibrary } from '../../../src/shared/demo/demo-library'
import { demoTester, recordTake } from '../../../src/shared/demo/demo-recordings'
import { DEMO_MOVEMENTS } from '../../../src/shared/demo/movements'
import { drawPhoneSensor, PERFECT_SENSOR } from '../../../src/shared/demo/phone-sensor'
import { senseMotion, stillHand } from '../../../src/shared/demo/rigid-body'
import { drawTesterStyle } from '../../../src/shared/demo/tester-style'
import { toleranceDeg } from '../../../src/shared/grip/grip-tolerance'
import { measureGrip } from '../../../src/shared/grip/measure-grip'
import { rotationAbout, turnSamples } from '../../../src/shared/grip/turn-samples'
import type { Background, FullLibrary } from '../../../src/shared/model/library'
import type { SampleBlock } from '../../../src/shared/model/sample'
import { createRandom } from '../../../src/shared/statistics/random'
import { wilson } from '../../../src/shared/statistics/wilson'
import { defaultTarget } from '../../../src/shared/target/default-target'
import { cutTake } from '../../../src/shared/training/cut-take'
import { prepareLibrary } from '../../../src/shared/training/prepare'
import { trainModel } from '../../../src/shared/training/train-model'

const target = defaultTarget()

describe('turning raw samples', () => {
  it('is the rotation about an axis that SciPy gives for 50° about (1, 2, 3)', () => {
    const root = Math.sqrt(14)
    const r = rotationAbout([1 / root, 2 / root, 3 / root], 50)
    const expected = [
      0.66830278, -0.563171626, 0.486013491, 0.665232309, 0.744848293, -0.051642965, -0.332922466,
      0.357825014, 0.872424146,
    ]
    for (const [i, value] of expected.entries()) expect(r[i]).toBeCloseTo(value, 8)
  })

  it('is what the physical model reads with another grip, where the sensor is on the axis', () => {
    // The sensor lies on the long axis, so the turned grip moves nothing but its directions.
    const leverM: [number, number, number] = [0, 0.085, 0]
    const grip = { rollDeg: 20, tiltDeg: 0, skewDeg: 0 }
    for (const rollDeg of [-150, -40, 75, 180]) {
      const read = (turn: number) => {
        const hand = stillHand({ pitch: 0.4, yaw: 0.2 })
        hand.pitch.rate = 3
        hand.yaw.accel = -7
        hand.roll.rate = 1.2
        hand.x.accel = 4
        const motion = senseMotion(hand, { grip: { ...grip, rollDeg: 20 + turn }, leverM })
        return [...motion.specificForce, ...motion.angularRate]
      }
      const block: SampleBlock = { tMs: new Float64Array(1), values: Float32Array.from(read(0)) }
      const turned = turnSamples(block, { rollDeg, tiltDeg: 0 }, target)
      for (const [i, value] of read(rollDeg).entries())
        expect(turned.values[i]).toBeCloseTo(value, 4)
    }
  })

  it('leaves the long axis alone when rolled, and all lengths when tilted', () => {
    const values = Float32Array.from([1, 2, 3, -4, 5, 6])
    const block: SampleBlock = { tMs: new Float64Array(1), values }
    const rolled = turnSamples(block, { rollDeg: 77, tiltDeg: 0 }, target)
    expect(rolled.values[1]).toBeCloseTo(2, 5)
    expect(rolled.values[4]).toBeCloseTo(5, 5)
    const tilted = turnSamples(block, { rollDeg: 10, tiltDeg: -30 }, target)
    expect(Math.hypot(...tilted.values.slice(0, 3))).toBeCloseTo(Math.hypot(1, 2, 3), 5)
  })
})

describe('reach of a remedy', () => {
  const points = (values: [number, number][]) =>
    values.map(([angleDeg, hits]) => ({ angleDeg, recall: wilson(hits, 100) }))

  it('is the nearer of the two sides, between points by a straight line', () => {
    const line = points([
      [-60, 50],
      [-30, 95],
      [0, 100],
      [30, 80],
      [60, 20],
    ])
    expect(toleranceDeg(line, 0.9)).toBe(15)
    expect(toleranceDeg(line, 0.5)).toBe(45)
    expect(
      toleranceDeg(
        points([
          [0, 80],
          [30, 90],
          [-30, 90],
        ]),
        0.9,
      ),
    ).toBe(0)
    expect(
      toleranceDeg(
        points([
          [-180, 95],
          [0, 95],
          [180, 95],
        ]),
        0.9,
      ),
    ).toBe(180)
  })
})

/** Three testers and half the takes of the demo: enough to tell the remedies apart. */
async function smallDemo(): Promise<FullLibrary> {
  const full = await generateDemoLibrary(7)
  const testers = [...new Set(full.recordings.map(({ recording }) => recording.testerCode))].slice(
    0,
    3,
  )
  const recordings = full.recordings.filter(
    ({ recording }, i) =>
      testers.includes(recording.testerCode) && (recording.kind === 'background' || i % 2 === 0),
  )
  return { library: full.library, recordings }
}

describe('grip tolerance of the demo', () => {
  it('falls with the turn where nothing is aligned, and not where gravity aligns', async () => {
    const core = await loadCoreForNode()
    const steps: number[] = []
    const measured = await measureGrip(core, await smallDemo(), ({ done }) => steps.push(done), {
      rolls: [-90, 0, 90],
      tilts: [],
      remedies: ['mark', 'gravity'],
      rounds: 3,
    })
    if (!measured.ok) throw new Error(measured.message)
    const [mark, gravity] = measured.value.remedies
    const recall = (score: typeof mark, angle: number) =>
      score!.roll.find(({ angleDeg }) => angleDeg === angle)!.recall
    expect(measured.value.holdout).toBe('tester')
    // Intervals that do not touch: the difference is no chance.
    expect(recall(mark, 90).high).toBeLessThan(recall(mark, 0).low)
    expect(recall(gravity, 90).low).toBeGreaterThan(recall(mark, 90).high)
    expect(gravity!.rollUnknown?.n).toBeGreaterThan(0)
    expect(measured.value.verticalDeg).toBeCloseTo(15, 0)
    expect(steps).toEqual([...steps].sort((a, b) => a - b))
  })

  it('holds takes out where one tester made them all, whoever recorded the background', async () => {
    const { library, recordings } = await smallDemo()
    const own = recordings.filter(({ recording }) => recording.testerCode === 'T01')
    const walk = {
      recording: {
        ...own[0]!.recording,
        id: 'walk',
        kind: 'background' as const,
        testerCode: 'T09',
      } as Background,
      samples: own[0]!.samples,
    }
    const full = { library, recordings: [...own, walk] }
    const options = { rolls: [0], tilts: [0], remedies: ['mark' as const], rounds: 2 }
    const measured = await measureGrip(await loadCoreForNode(), full, undefined, options)
    expect(measured.ok ? measured.value.holdout : measured.message).toBe('take')
  })

  it('says of turned samples what takes say that were made in that grip', async () => {
    const core = await loadCoreForNode()
    const full = await smallDemo()
    const plain = {
      ...full,
      library: { ...full.library, training: { ...full.library.training, rollAlign: false } },
    }
    const trained = trainModel(core, plain)
    if (!trained.ok) throw new Error(trained.message)
    core.load(trained.value.bytes)
    const answersOf = (takes: { samples: SampleBlock; gestureId: string }[]) => {
      const base = plain.recordings.find(({ recording }) => recording.kind === 'take')!.recording
      const recordings = takes.map(({ samples, gestureId }, i) => ({
        recording: { ...base, id: `t${i}`, kind: 'take' as const, gestureId, trim: null },
        samples,
      }))
      const prepared = prepareLibrary({ library: plain.library, recordings })
      return prepared.takes.map(
        (take) => cutTake(core, take, trained.value.model).movement?.event.gesture ?? null,
      )
    }
    const own = createRandom(77)
    const style = drawTesterStyle(1, own)
    const sensor = { ...PERFECT_SENSOR, ...drawPhoneSensor(own) }
    let [same, n] = [0, 0]
    for (const rollDeg of [60, 120]) {
      const made = (extra: number) =>
        DEMO_MOVEMENTS.flatMap((movement, index) =>
          [0, 1].map((repeat) => {
            const tester = demoTester(style, sensor)
            const { grip } = tester.place
            // The same seed performs the same movement; only the grip differs.
            tester.place = { ...tester.place, grip: { ...grip, rollDeg: grip.rollDeg + extra } }
            const samples = recordTake(tester, movement, createRandom(100 * index + repeat))
            return { samples, gestureId: movement.id }
          }),
        )
      const physical = answersOf(made(rollDeg))
      const turned = answersOf(
        made(0).map(({ samples, gestureId }) => ({
          samples: turnSamples(samples, { rollDeg, tiltDeg: 0 }, target),
          gestureId,
        })),
      )
      same += physical.filter((answer, i) => answer === turned[i]).length
      n += physical.length
    }
    // Rounding, noise and the 12 mm that the sensor stands off the axis differ, nothing else.
    expect(same / n).toBeGreaterThanOrEqual(0.85)
  })
})
