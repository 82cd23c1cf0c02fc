import { findGaps } from '../conditioning/timing'
import {
  type Background,
  DEFAULT_TRAINING,
  type FullLibrary,
  type Gesture,
  type Library,
  type RecordingWithSamples,
  type Take,
} from '../model/library'
import type { SampleBlock } from '../model/sample'
import type { OnProgress } from '../protocol/recogniser'
import { createRandom, type Random } from '../statistics/random'
import { defaultTarget } from '../target/default-target'
import { DEMO } from '../words/en/demo'
import { WORK_PROGRESS } from '../words/en/progress-work'
import { DEMO_ANSWERS, demoLight } from './demo-light'
import { type DemoTester, demoTester, recordBackground, recordTake } from './demo-recordings'
import { DEMO_MOVEMENTS, type DemoMovement } from './movements'
import { drawPhoneSensor, phoneFacts } from './phone-sensor'
import { drawTesterStyle } from './tester-style'

/** Seed of the demo that the app offers, so that everybody talks about the same one. */
export const DEMO_SEED = 1
export const DEMO_TESTERS = 6
export const DEMO_TAKES_PER_GESTURE = 8
/** Background of each tester, s; over ten minutes together. */
export const DEMO_BACKGROUND_S = 110

/** How much is generated. */
export interface DemoSize {
  testers: number
  takesPerGesture: number
  /** Background of each tester, s; none at 0. */
  backgroundS: number
}

const DEMO_SIZE: DemoSize = {
  testers: DEMO_TESTERS,
  takesPerGesture: DEMO_TAKES_PER_GESTURE,
  backgroundS: DEMO_BACKGROUND_S,
}

/** When the first recording was made, as far as the demo is concerned. */
const FIRST_RECORDED_MS = Date.UTC(2025, 10, 8, 16, 0, 0)
/** Short enough for a decision within 100 ms on an 8-bit part at 16 MHz: the demo runs anywhere. */
const DEMO_SEGMENT = { length: 21, bandShare: 0.14 }
/** Between one recording and the next. */
const PAUSE_MS = 4_000

/** The answer to a movement, when the parade has one. */
function answerTo(movementId: string): Pick<Gesture, 'answer'> {
  const answer = DEMO_ANSWERS[movementId]
  return answer === undefined ? {} : { answer }
}

/** Random UUID, version 4 (RFC 9562), from the seeded stream: the same seed gives the same ids. */
export function seededUuid(random: Random): string {
  const words = [0, 1, 2, 3].map(() => random.nextUint32().toString(16).padStart(8, '0'))
  const hex = words.join('')
  const variant = '89ab'[Number.parseInt(hex[16] ?? '0', 16) % 4]
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `4${hex.slice(13, 16)}`,
    `${variant}${hex.slice(17, 20)}`,
    hex.slice(20),
  ].join('-')
}

/** Gives out ids and times, and wraps samples as recordings of the library. */
class Writer {
  readonly libraryId: string
  readonly recordings: RecordingWithSamples[] = []
  readonly #ids: Random
  #clockMs = FIRST_RECORDED_MS

  constructor(ids: Random) {
    this.#ids = ids
    this.libraryId = seededUuid(ids)
  }

  addTake(tester: DemoTester, movement: DemoMovement, samples: SampleBlock): void {
    const facts = this.#facts(tester, samples)
    const recording: Take = { ...facts, kind: 'take', gestureId: movement.id, trim: null }
    this.recordings.push({ recording, samples })
  }

  addBackground(tester: DemoTester, samples: SampleBlock): void {
    const recording: Background = { ...this.#facts(tester, samples), kind: 'background' }
    this.recordings.push({ recording, samples })
  }

  #facts(tester: DemoTester, samples: SampleBlock) {
    const durationMs = samples.tMs[samples.tMs.length - 1] ?? 0
    const recordedAt = new Date(this.#clockMs).toISOString()
    this.#clockMs += Math.ceil(durationMs) + PAUSE_MS
    return {
      id: seededUuid(this.#ids),
      libraryId: this.libraryId,
      testerCode: tester.style.code,
      hand: tester.style.hand,
      source: 'generated' as const,
      recordedAt,
      device: phoneFacts(DEMO.phoneOf(tester.style.code)),
      sampleCount: samples.tMs.length,
      durationMs,
      gaps: findGaps(samples.tMs),
      note: '',
      deletedAt: null,
    }
  }
}

function demoFacts(id: string): Library {
  return {
    id,
    name: DEMO.name,
    createdAt: new Date(FIRST_RECORDED_MS).toISOString(),
    generated: true,
    gestures: DEMO_MOVEMENTS.map(({ id, name, note }) => ({ id, name, note, ...answerTo(id) })),
    light: demoLight(),
    target: defaultTarget(),
    training: { ...DEFAULT_TRAINING, ...DEMO_SEGMENT },
  }
}

/**
 * The demo library: carriers of a night parade try the movements of their hand lanterns. The same
 * seed gives the same library to the bit, ids and times included.
 *
 * @param seed any integer; its low 32 bits count.
 * @param onProgress called after each tester's round of all gestures and after each background.
 * @param pause awaited as often; give one that lets the thread do other work, such as a timer.
 * @param size other numbers than the demo's, for measurements on larger libraries.
 */
export async function generateDemoLibrary(
  seed: number,
  onProgress: OnProgress = () => {},
  pause: () => Promise<void> = () => Promise.resolve(),
  { testers, takesPerGesture, backgroundS }: DemoSize = DEMO_SIZE,
): Promise<FullLibrary> {
  const random = createRandom(seed)
  const writer = new Writer(random.fork())
  const total = testers * (1 + takesPerGesture)
  let done = 0
  const tell = async (code: string) => {
    done++
    onProgress({ done, total, what: WORK_PROGRESS.generatingTakesOf(code) })
    await pause()
  }
  for (let index = 0; index < testers; index++) {
    const own = random.fork()
    const tester = demoTester(drawTesterStyle(index, own), drawPhoneSensor(own))
    const away = own.fork()
    if (backgroundS > 0) writer.addBackground(tester, recordBackground(tester, backgroundS, away))
    await tell(tester.style.code)
    for (let round = 0; round < takesPerGesture; round++) {
      for (const movement of DEMO_MOVEMENTS) {
        writer.addTake(tester, movement, recordTake(tester, movement, own.fork()))
      }
      await tell(tester.style.code)
    }
  }
  return { library: demoFacts(writer.libraryId), recordings: writer.recordings }
}
