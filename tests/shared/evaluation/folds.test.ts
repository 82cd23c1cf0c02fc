import { beforeAll, describe, expect, it } from 'vitest'
import { DEMO_SEED, generateDemoLibrary } from '../../../src/shared/demo/demo-library'
import { planFolds } from '../../../src/shared/evaluation/folds'
import type { Holdout } from '../../../src/shared/model/evaluation'
import { type Prepared, prepareLibrary } from '../../../src/shared/training/prepare'
import { tinyLibrary } from '../training/tiny-library'

let demo: Prepared

beforeAll(async () => {
  demo = prepareLibrary(await generateDemoLibrary(DEMO_SEED))
})

function plan(prepared: Prepared, holdout: Holdout, seed = 1) {
  const planned = planFolds(prepared, holdout, seed)
  if (!planned.ok) throw new Error(planned.message)
  return planned.value
}

const testersOf = ({ takes, backgrounds }: Prepared) =>
  new Set([
    ...takes.map(({ take }) => take.testerCode),
    ...backgrounds.map(({ background }) => background.testerCode),
  ])
const idsOf = ({ takes }: Prepared) => takes.map(({ take }) => take.id)
const backgroundCounts = ({ backgrounds }: Prepared) =>
  backgrounds.reduce((sum, { counts }) => sum + counts.length, 0)

describe('rounds with testers held out', () => {
  it('never have a tester in both halves, by takes or by background', () => {
    const { folds } = plan(demo, 'tester')
    expect(folds.length).toBe(new Set(demo.takes.map(({ take }) => take.testerCode)).size)
    for (const { train, test, heldOut } of folds) {
      expect([...testersOf(test)]).toEqual([heldOut])
      expect(testersOf(train)).not.toContain(heldOut)
    }
  })

  it('leave out what no other tester performed, and say so', () => {
    const full = tinyLibrary()
    full.recordings = full.recordings.filter(
      ({ recording }) => recording.testerCode === 'T0' || !recording.id.startsWith('roll-'),
    )
    const { skipped, folds } = plan(prepareLibrary(full), 'tester')
    expect(skipped.map(({ takeId }) => takeId)).toEqual([0, 1, 2, 3].map((k) => `roll-T0-${k}`))
    expect(skipped[0]?.reason).toContain('Roll')
    expect(folds.flatMap(({ test }) => idsOf(test))).not.toContain('roll-T0-0')
  })

  it('are refused with one tester, with a word on what to do instead', () => {
    const planned = planFolds(prepareLibrary(tinyLibrary({ testers: 1 })), 'tester', 1)
    expect(planned).toMatchObject({ ok: false, code: 'evaluate/one-tester' })
    if (!planned.ok) expect(planned.message).toContain('hold out takes')
  })
})

describe('rounds with takes held out', () => {
  it('test every take once, by a model that has not seen it', () => {
    const { folds } = plan(demo, 'take')
    expect(folds.flatMap(({ test }) => idsOf(test)).sort()).toEqual(idsOf(demo).sort())
    for (const { train, test } of folds) {
      const known = new Set(idsOf(train))
      expect(idsOf(test).some((id) => known.has(id))).toBe(false)
    }
  })

  it('have every gesture in each round in equal shares', () => {
    for (const { test } of plan(demo, 'take').folds) {
      for (const gesture of demo.gestures.keys()) {
        const count = test.takes.filter((take) => take.gesture === gesture).length
        expect(Math.abs(count - 48 / 5)).toBeLessThan(1)
      }
    }
  })

  it('are the same for the same seed and others for another', () => {
    const tests = (seed: number) => plan(demo, 'take', seed).folds.map(({ test }) => idsOf(test))
    expect(tests(4)).toEqual(tests(4))
    expect(tests(4)).not.toEqual(tests(5))
  })
})

describe('background', () => {
  it.each(['tester', 'take'] as const)('is counted once in all with %s held out', (holdout) => {
    const { folds } = plan(demo, holdout)
    const tested = folds.reduce((sum, { test }) => sum + backgroundCounts(test), 0)
    expect(tested).toBe(backgroundCounts(demo))
    for (const { train, test } of folds) {
      expect(backgroundCounts(train) + backgroundCounts(test)).toBe(backgroundCounts(demo))
    }
  })

  it('of somebody who has no takes is cut up among the rounds', () => {
    const prepared = prepareLibrary(tinyLibrary({ backgroundS: 30 }))
    for (const { background } of prepared.backgrounds) background.testerCode = 'nobody'
    const { folds } = plan(prepared, 'tester')
    const all = backgroundCounts(prepared)
    for (const { test } of folds) {
      expect(Math.abs(backgroundCounts(test) - all / 3)).toBeLessThan(12)
    }
    expect(folds.reduce((sum, { test }) => sum + backgroundCounts(test), 0)).toBe(all)
  })
})
