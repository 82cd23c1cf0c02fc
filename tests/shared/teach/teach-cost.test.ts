import { beforeAll, expect, test } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { WasmCore } from '../../../src/shared/core/create-core'
import { generateDemoLibrary } from '../../../src/shared/demo/demo-library'
import { evaluateLibrary } from '../../../src/shared/evaluation/evaluate-library'
import type { FullLibrary } from '../../../src/shared/model/library'
import type { RunParts } from '../../../src/shared/parts/part-jobs'
import { partsHere } from '../../../src/shared/parts/parts-here'
import { teachCostInParts } from '../../../src/shared/teach/teach-cost'
import type { TaughtTakes, TeachRound } from '../../../src/shared/teach/teach-part'
import { prepareLibrary } from '../../../src/shared/training/prepare'

let core: WasmCore
let demo: FullLibrary

beforeAll(async () => {
  core = await loadCoreForNode()
  const { library, recordings } = await generateDemoLibrary(4)
  const few = recordings.filter(({ recording }) => recording.testerCode <= 'T03')
  demo = { library, recordings: few }
})

/** The demo without its last gesture, and takes of that one by one tester. */
function withoutLast(count = 3): { full: FullLibrary; takes: TaughtTakes['takes'] } {
  const gestures = demo.library.gestures.slice(0, -1)
  const last = demo.library.gestures.at(-1)!
  const takes = prepareLibrary(demo).takes.filter(
    ({ take }) => take.gestureId === last.id && take.testerCode === 'T01',
  )
  const recordings = demo.recordings.filter(
    ({ recording }) => recording.kind !== 'take' || recording.gestureId !== last.id,
  )
  return {
    full: { library: { ...demo.library, gestures }, recordings },
    takes: takes.slice(0, count),
  }
}

/** The cost, and the rounds that it is the sum of. */
async function roundsOf(full: FullLibrary, taught: TaughtTakes) {
  const rounds: TeachRound[] = []
  const here = partsHere(core)
  const run = (async (...job: Parameters<RunParts>) => {
    const done = await here(...job)
    if (job[0] === 'teach' && done.ok) rounds.push(...(done.value as TeachRound[]))
    return done
  }) as RunParts
  const cost = await teachCostInParts(run, full, taught)
  if (!cost.ok) throw new Error(cost.message)
  return { cost: cost.value, rounds }
}

/** Takes held out in rounds that accepted what was taught. */
function takesOf(rounds: readonly TeachRound[]): Set<string> {
  const accepted = rounds.filter((round) => round.accepted)
  return new Set(accepted.flatMap(({ outcomes }) => outcomes.map(({ takeId }) => takeId)))
}

test('before it is taught the others are recognised as the evaluation says, after it hardly less', async () => {
  const { full, takes } = withoutLast()
  const { cost, rounds } = await roundsOf(full, { gestureId: null, takes })
  const evaluation = await evaluateLibrary(core, full, 'tester', undefined, { matcher: 'template' })
  if (!evaluation.ok) throw new Error(evaluation.message)
  const counted = takesOf(rounds)
  const { outcomes } = evaluation.value
  const same = outcomes.filter(({ takeId }) => counted.has(takeId))
  expect(cost.before).toMatchObject({
    hits: same.filter(({ answer, truth }) => answer === truth).length,
    n: same.length,
  })
  expect(cost).toMatchObject({ holdout: 'tester', rounds: 3, place: null })
  expect(cost.accepted).toBeGreaterThan(0)
  const lost = cost.before.hits - cost.after.hits
  expect(cost.loss.value).toBeCloseTo(lost / cost.before.n, 10)
  expect(cost.lost.length).toBeGreaterThanOrEqual(lost)
  expect(cost.losers.length === 0).toBe(cost.lost.length === 0)
  expect(cost.after.value).toBeGreaterThan(cost.before.value - 0.05)
  const hours = cost.background?.hours ?? 0
  expect(hours).toBeGreaterThan(0)
  expect(cost.background?.perHour).toBeCloseTo((cost.background?.activations ?? 0) / hours, 6)
}, 60_000)

test('in place of a gesture, its takes by others are counted apart', async () => {
  const first = demo.library.gestures[0]!
  const takes = prepareLibrary(demo).takes.filter(
    ({ take }) => take.gestureId === first.id && take.testerCode === 'T01',
  )
  const taught = { gestureId: first.id, takes: takes.slice(0, 3) }
  const { cost, rounds } = await roundsOf(demo, taught)
  const counted = takesOf(rounds)
  const all = prepareLibrary(demo).takes.filter(({ take }) => counted.has(take.id))
  const own = all.filter(({ take }) => take.gestureId === first.id).length
  expect(cost.place).toMatchObject({ name: first.name, before: { n: own }, after: { n: own } })
  expect(cost.before.n).toBe(all.length - own)
}, 60_000)

test('takes of rounds that refused are not counted as takes without loss', async () => {
  const { full, takes } = withoutLast()
  const { cost, rounds } = await roundsOf(full, { gestureId: null, takes })
  // One of the three refuses these takes: else nothing would be seen here.
  expect([cost.accepted, cost.rounds]).toEqual([2, 3])
  const counted = rounds.filter(({ accepted }) => accepted).flatMap(({ outcomes }) => outcomes)
  const all = rounds.flatMap(({ outcomes }) => outcomes)
  expect(counted.length).toBeLessThan(all.length)
  for (const { n } of [cost.before, cost.after, cost.loss]) expect(n).toBe(counted.length)
  const testers = new Set(counted.map(({ testerCode }) => testerCode))
  expect(cost.testers.better + cost.testers.worse + cost.testers.equal).toBe(testers.size)
}, 60_000)

test('takes that no round accepts cost nothing and say so', async () => {
  const { full } = withoutLast()
  const prepared = prepareLibrary(full)
  const different = [0, 2, 4].map((gesture) => prepared.takes.find((t) => t.gesture === gesture)!)
  const { cost } = await roundsOf(full, { gestureId: null, takes: different })
  expect(cost.accepted).toBe(0)
  expect([cost.before.n, cost.after.n]).toEqual([0, 0])
  expect(cost.lost).toEqual([])
}, 60_000)

test('one tester with one take each cannot be held out, and the sentence says what to record', async () => {
  const { full, takes } = withoutLast()
  const seen = new Set<string>()
  const recordings = full.recordings.filter(({ recording }) => {
    if (recording.kind !== 'take' || recording.testerCode !== 'T01') return false
    if (seen.has(recording.gestureId)) return false
    seen.add(recording.gestureId)
    return true
  })
  const cost = await teachCostInParts(
    partsHere(core),
    { ...full, recordings },
    { gestureId: null, takes },
  )
  expect(cost).toMatchObject({ ok: false, code: 'evaluate/few-takes' })
})
