import { describe, expect, it } from 'vitest'
import { checkBoard } from '../../../src/shared/board/check/check-board'
import { foldedHz, mainsOf } from '../../../src/shared/board/check/mains'
import { nearestSignedAxes } from '../../../src/shared/board/check/poses'
import { FAULTS } from '../../../src/shared/board/simulate/faults'
import { drawTrial, findingsOf } from '../../../src/shared/board/simulate/trial'
import type { Matrix3 } from '../../../src/shared/model/target'
import { wilson } from '../../../src/shared/statistics/wilson'
import { defaultTarget } from '../../../src/shared/target/default-target'

/** Seeds of these tests; the bench has its own, and limits were set on others still. */
const FIRST_SEED = 400_000

describe('the board check', () => {
  it('finds nothing wrong with sound boards of both families, in counts and in units', () => {
    const wrong = Array.from({ length: 60 }, (_, i) => findingsOf(drawTrial(FIRST_SEED + i, null)))
    expect(wrong.filter((findings) => findings.length > 0)).toEqual([])
  })

  it.each(FAULTS.map((fault) => [fault.name, fault] as const))('finds: %s', (_name, fault) => {
    const found = Array.from({ length: 6 }, (_, i) =>
      findingsOf(drawTrial(FIRST_SEED + 1000 + i, fault)).map(({ code }) => code),
    )
    const hits = found.filter((codes) => codes.includes(fault.expected)).length
    expect(wilson(hits, found.length).value, JSON.stringify(found)).toBeGreaterThanOrEqual(5 / 6)
  })

  it('gives evidence, causes and what to measure next with every finding', () => {
    for (const fault of FAULTS) {
      for (const finding of findingsOf(drawTrial(FIRST_SEED + 2000, fault))) {
        expect(finding.causes.length, finding.code).toBeGreaterThanOrEqual(2)
        expect(finding.next.length, finding.code).toBeGreaterThanOrEqual(2)
        expect(finding.seen, finding.code).not.toMatch(/NaN|undefined|Infinity/)
      }
    }
  })

  it('says which questions it could not ask when only rest was logged', () => {
    const trial = drawTrial(FIRST_SEED + 3000, null)
    const still = trial.parts.filter(({ step }) => step === 'still')
    const { findings, passed } = checkBoard(still, trial.target)
    expect(findings).toEqual([])
    const open = passed.filter(({ notChecked }) => notChecked !== null).map(({ what }) => what)
    expect(open).toContain('Axes and handedness')
    expect(open).toContain('Scale of the gyroscope')
  })

  it('says so when a log has three rows', () => {
    const trial = drawTrial(FIRST_SEED + 3001, null)
    const log = trial.parts[0]!.log
    const short = { ...log, values: log.values.slice(0, 18), tMs: log.tMs?.slice(0, 3) ?? null }
    const { findings } = checkBoard([{ step: 'free', log: short }], trial.target)
    expect(findings.map(({ code }) => code)).toEqual(['too-short'])
    expect(findings[0]?.seen).toContain('3 rows')
  })

  it('finds reversed time and a rate that changes on the way', () => {
    const trial = drawTrial(FIRST_SEED + 3002, {
      name: 'tone-coupled-in',
      expected: 'hum',
      needs: { timed: true },
    })
    const log = trial.parts[0]!.log
    const back = { ...log, tMs: log.tMs!.map((t, i) => (i > 50 ? t - 300 : t)) }
    const mixed = { ...log, tMs: log.tMs!.map((t, i) => (i > 150 ? 2 * t - log.tMs![150]! : t)) }
    const codes = (one: typeof log) =>
      checkBoard([{ step: 'still', log: one }], trial.target).findings.map(({ code }) => code)
    expect(codes(back)).toContain('time-backwards')
    expect(codes(mixed)).toContain('rate-mixed')
  })

  it('names a gyroscope of the decimal family that is read as range / 32768: 0x5949 is 200 deg/s', () => {
    // ST community thread 71844: a ±250 deg/s part reads 22857 (0x5949) at 200 deg/s, 8.75 mdeg/s a
    // count; with 7.63 mdeg/s it would be taken for 174.4 deg/s, a factor of 1 / 1.14688.
    const fault = FAULTS.find(({ name }) => name === 'gyroscope-family')!
    const seen = Array.from({ length: 4 }, (_, i) =>
      findingsOf(drawTrial(FIRST_SEED + 3100 + i, fault)),
    )
    for (const [finding] of seen) {
      expect(finding?.code).toBe('gyro-scale')
      expect(finding?.causes[0]).toMatch(/8\.75/)
    }
  })
})

describe('mains folded into a rate', () => {
  it('shows where sampling puts it', () => {
    expect(foldedHz(50, 104)).toBe(50)
    expect(foldedHz(100, 104)).toBe(4)
    expect(foldedHz(50, 52)).toBe(2)
    expect(mainsOf(4, 104)).toBe(100)
    expect(mainsOf(30, 104)).toBeNull()
  })
})

describe('nearest signed axes', () => {
  it('tells a mirroring from a turn, which a fitted rotation alone would hide', () => {
    // Trap of Kabsch and Wahba fits: three unit axes with one negated fit the identity badly.
    const mirrored: Matrix3 = [1, 0, 0, 0, 1, 0, 0, 0, -1]
    expect(nearestSignedAxes(mirrored)).toMatchObject({ mirrored: true, isIdentity: false, fit: 1 })
    const turned: Matrix3 = [0, 1.02, 0.01, -0.99, 0.02, 0, 0, 0, 1]
    const found = nearestSignedAxes(turned)
    expect(found.matrix).toEqual([0, 1, 0, -1, 0, 0, 0, 0, 1])
    expect(found.mirrored).toBe(false)
    expect(found.scale).toBeCloseTo((1.02 + 0.99 + 1) / 3, 12)
    expect(defaultTarget().longAxis).toBe('y')
  })
})
