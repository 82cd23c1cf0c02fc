import { describe, expect, it } from 'vitest'
import type { GripTolerance, RemedyScore } from '../../../src/shared/grip/grip-tolerance'
import { bestRemedy } from '../../../src/shared/present/best-remedy'
import { wilson } from '../../../src/shared/statistics/wilson'
import {
  basisWords,
  costWords,
  reachWords,
  verticalWords,
} from '../../../src/shared/words/en/grip-words'

function score(remedy: RemedyScore['remedy'], hits: number[], tableBytes: number): RemedyScore {
  const roll = hits.map((count, i) => {
    return { angleDeg: -180 + (360 * i) / (hits.length - 1), recall: wilson(count, 100) }
  })
  const rollUnknown = remedy === 'gravity' ? wilson(3, 100) : null
  return { remedy, roll, tilt: [], tableBytes, rollUnknown }
}

const mark = score('mark', [10, 40, 96, 40, 10], 4000)
const gravity = score('gravity', [95, 96, 96, 95, 95], 4000)
const copies = score('copies', [92, 91, 93, 92, 92], 16_000)
const grip: GripTolerance = {
  remedies: [mark, gravity, copies],
  holdout: 'tester',
  rounds: 4,
  verticalDeg: 15.07,
}

describe('grip in words', () => {
  it('says how far the grip may turn, with the count as recorded', () => {
    expect(reachWords(mark, 0.9)).toMatch(
      /up to 9° to either side \(96\.0.%, 96\/100, as recorded\)/,
    )
    expect(reachWords(gravity, 0.9)).toMatch(/all the way round/)
    expect(reachWords(mark, 0.99)).toMatch(/below .* as recorded already/)
  })

  it('says what a remedy costs, in flash only where it takes more', () => {
    expect(costWords(copies, grip.remedies)).toMatch(/15\.6.KiB of flash, 11\.7.KiB more/)
    expect(costWords(gravity, grip.remedies)).not.toMatch(/more of it/)
    expect(costWords(gravity, grip.remedies)).toMatch(/near level/)
  })

  it('prefers the cheaper of remedies that carry as far', () => {
    expect(bestRemedy(grip, 0.9)?.remedy).toBe('gravity')
    expect(bestRemedy({ ...grip, remedies: [mark, copies] }, 0.9)?.remedy).toBe('copies')
  })

  it('says where gravity cannot tell, and when that is too often', () => {
    expect(verticalWords(grip)).toMatch(/within 15° of the vertical.*3\/100 takes\.$/)
    const often = { ...gravity, rollUnknown: wilson(40, 100) }
    expect(verticalWords({ ...grip, remedies: [mark, often] })).toMatch(/too often to rely on/)
    expect(basisWords(grip)).toMatch(/4 rounds, a tester held out in each; 100 takes at each angle/)
  })
})
