import { findGaps } from '../../../shared/conditioning/timing'
import { seededUuid } from '../../../shared/demo/demo-library'
import { type DemoTester, demoTester, recordTake } from '../../../shared/demo/demo-recordings'
import type { DemoMovement } from '../../../shared/demo/movements'
import { drawPhoneSensor, phoneFacts } from '../../../shared/demo/phone-sensor'
import { drawTesterStyle } from '../../../shared/demo/tester-style'
import {
  DEFAULT_TRAINING,
  type FullLibrary,
  type RecordingWithSamples,
} from '../../../shared/model/library'
import type { Target } from '../../../shared/model/target'
import type { Random } from '../../../shared/statistics/random'
import { defaultTarget } from '../../../shared/target/default-target'

/** A gesture of a made-up library. */
export interface PlantedGesture {
  movement: DemoMovement
  /** Turn of the grip before the movement, deg; as the tester holds it when missing. */
  rollDeg?: number
  /** The whole movement slower or larger than the tester's own way, overshoot included. */
  slower?: number
  larger?: number
}

export interface PlantedOptions {
  gestures: readonly PlantedGesture[]
  testers: number
  /** Of each gesture by each tester. */
  takes: number
  target?: Partial<Target>
  /** From the grip to the sensor, m; as in the demo's lantern when missing. */
  leverM?: [number, number, number]
}

/** Takes of drawn testers by the physical model of the demo; no background. */
export function plantedLibrary(random: Random, options: PlantedOptions): FullLibrary {
  const { gestures, testers, takes, target, leverM } = options
  const ids = random.fork()
  const libraryId = seededUuid(ids)
  const recordings: RecordingWithSamples[] = []
  for (let index = 0; index < testers; index++) {
    const own = random.fork()
    // What is planted may be a direction in the room, which a left hand does not mirror.
    const style = { ...drawTesterStyle(index, own), hand: 'right' as const }
    const drawn = demoTester(style, drawPhoneSensor(own))
    const place = { ...drawn.place, ...(leverM === undefined ? {} : { leverM }) }
    const tester = { ...drawn, place }
    for (let round = 0; round < takes; round++) {
      for (const gesture of gestures) {
        const { movement } = gesture
        const samples = recordTake(asAsked(tester, gesture), movement, own.fork())
        const durationMs = samples.tMs.at(-1) ?? 0
        recordings.push({
          samples,
          recording: {
            kind: 'take',
            gestureId: movement.id,
            trim: null,
            id: seededUuid(ids),
            libraryId,
            testerCode: tester.style.code,
            hand: tester.style.hand,
            source: 'generated',
            recordedAt: '2025-11-08T16:00:00Z',
            device: phoneFacts('Generated phone'),
            sampleCount: samples.tMs.length,
            durationMs,
            gaps: findGaps(samples.tMs),
            note: '',
            deletedAt: null,
          },
        })
      }
    }
  }
  const library = {
    id: libraryId,
    name: 'Drawn movements',
    createdAt: '2025-11-08T16:00:00Z',
    generated: true,
    gestures: gestures.map(({ movement: { id, name, note } }) => ({ id, name, note })),
    target: { ...defaultTarget(), ...target },
    training: { ...DEFAULT_TRAINING },
  }
  return { library, recordings }
}

/** The prop turned in the hand, the hand slower or wider. */
function asAsked(tester: DemoTester, gesture: PlantedGesture): DemoTester {
  const { rollDeg = 0, slower = 1, larger = 1 } = gesture
  const { style, place } = tester
  return {
    ...tester,
    style: { ...style, speed: style.speed / slower, size: style.size * larger },
    place: { ...place, grip: { ...place.grip, rollDeg: place.grip.rollDeg + rollDeg } },
  }
}
