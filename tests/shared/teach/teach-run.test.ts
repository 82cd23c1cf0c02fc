import { beforeAll, expect, test } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import { generateDemoLibrary } from '../../../src/shared/demo/demo-library'
import type { TrainedModel } from '../../../src/shared/model/evaluation'
import type { FullLibrary, RecordingWithSamples } from '../../../src/shared/model/library'
import { AXES, type SampleBlock } from '../../../src/shared/model/sample'
import { nearestOthers } from '../../../src/shared/present/nearest-others'
import { TEACH_TAKES, TeachRun, type TeachStep } from '../../../src/shared/teach/teach-run'
import { teachTakes } from '../../../src/shared/teach/teach-takes'
import { addRest } from '../../../src/shared/training/rest-tail'
import { trainModel } from '../../../src/shared/training/train-model'
import { teachWords } from '../../../src/shared/words/en/teach-words'

let demo: FullLibrary
let known: FullLibrary
let trained: TrainedModel

beforeAll(async () => {
  demo = await generateDemoLibrary(5)
  const last = demo.library.gestures.at(-1)!
  const recordings = demo.recordings.filter(
    ({ recording }) =>
      recording.testerCode <= 'T03' &&
      (recording.kind === 'background' || recording.gestureId !== last.id),
  )
  known = { library: { ...demo.library, gestures: demo.library.gestures.slice(0, -1) }, recordings }
  const result = trainModel(await loadCoreForNode(), known, { matcher: 'template' })
  if (!result.ok) throw new Error(result.message)
  trained = result.value
})

/** Takes of a gesture by a tester, each a second after the one before. */
function performed(gesture: number, testerCode: string): RecordingWithSamples[] {
  const { id } = demo.library.gestures[gesture]!
  return demo.recordings.filter(
    ({ recording }) =>
      recording.kind === 'take' &&
      recording.gestureId === id &&
      recording.testerCode === testerCode,
  )
}

async function startRun(): Promise<TeachRun> {
  const { accelSign } = demo.recordings[0]!.recording.device
  return new TeachRun(await loadCoreForNode(), trained.model, demo.library.target, accelSign)
}

/** One after the other on one clock, in blocks as the page gives them; at rest in between. */
function pushAll(run: TeachRun, takes: RecordingWithSamples[], clock: { ms: number }): TeachStep[] {
  return takes.flatMap(({ samples }) => {
    const start = clock.ms
    clock.ms += samples.tMs.at(-1)! + 1000
    const last = samples.values.slice(-AXES)
    for (let axis = 3; axis < AXES; axis++) last[axis] = 0
    const rest = Array.from({ length: 50 }, (_, i) => samples.tMs.at(-1)! + (i + 1) * 18)
    const blocks: SampleBlock[] = [
      { tMs: samples.tMs.map((t) => t + start), values: samples.values },
      {
        tMs: Float64Array.from(rest, (t) => t + start),
        values: Float32Array.from({ length: 50 * AXES }, (_, i) => last[i % AXES]!),
      },
    ]
    return blocks.flatMap((block) => run.push(block).steps)
  })
}

test('three movements of a new gesture are taken from the stream, the fourth is recognised', async () => {
  const run = await startRun()
  run.begin(null)
  const takes = performed(demo.library.gestures.length - 1, 'T04')
  const clock = { ms: 0 }
  const steps = pushAll(run, takes.slice(0, 3), clock)
  expect(steps.map(({ answer }) => answer.status)).toEqual(['more', 'more', 'done'])
  const { answer, gestureDistances } = steps[2]!
  expect(gestureDistances).toHaveLength(known.library.gestures.length)
  const [nearest] = nearestOthers(steps, trained.model, null)
  expect(nearest?.distance).toBe(answer.nearestDistance)
  const { seen } = teachWords(answer, trained.model, TEACH_TAKES, 'Bow')
  expect(seen).toContain(`the nearest other gesture is ${nearest?.name}`)
  const [after] = pushAll(run, takes.slice(3, 4), clock)
  expect(after?.answer.event).toMatchObject({
    kind: 'gesture',
    gesture: known.library.gestures.length,
  })

  // What is handed over teaches another core the same.
  const core = await loadCoreForNode()
  core.load(trained.bytes)
  core.openTeaching({ slots: 1, takes: TEACH_TAKES })
  const handed = steps.map(({ counts }) => {
    const whole = addRest(counts!, known.library.target.rateHz)
    return { counts: whole, from: 0, to: counts!.length / AXES }
  })
  expect(teachTakes(core, trained.model, null, handed)?.answer.status).toBe('done')
})

test('a session can begin again, and different movements are refused with the reason', async () => {
  const run = await startRun()
  run.begin(null)
  const clock = { ms: 0 }
  const [first] = pushAll(run, performed(0, 'T04').slice(0, 1), clock)
  expect(first?.answer).toMatchObject({ status: 'more', count: 1 })
  run.begin(null)
  const mixed = [1, 2, 3].map((gesture) => performed(gesture, 'T05')[0]!)
  const answer = pushAll(run, mixed, clock).at(-1)!.answer
  expect(['unlike', 'near']).toContain(answer.status)
  const { seen, todo } = teachWords(answer, trained.model, TEACH_TAKES, 'Bow')
  expect(seen).toContain('nothing was changed')
  expect(todo).not.toBe('')
})
