import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { affordableShape } from '../../../src/shared/budget/affordable'
import { budgetOf } from '../../../src/shared/budget/budget'
import { decisionWork } from '../../../src/shared/budget/costs'
import { MEASURED_COSTS } from '../../../src/shared/budget/measured-costs'
import { bandCells, decisionOperations } from '../../../src/shared/budget/operations'
import { PARTS, type Part, partOfTarget } from '../../../src/shared/budget/parts'
import { budgetWarnings, savings } from '../../../src/shared/budget/warnings'
import { countMemory } from '../../../src/shared/firmware/memory'
import { exampleModel, gesture } from '../../core/example-model'

const part = (key: string) => PARTS.find((one) => one.key === key) as Part

/** Eight gestures with so many templates, six axes. */
function library(templates: number, length = 32, band = 5) {
  const template = new Int8Array(length * 6)
  const gestures = Array.from({ length: 8 }, (_, index) =>
    gesture(`g${index}`, 1, new Array<Int8Array>(templates).fill(template)),
  )
  return exampleModel({
    normaliser: { length },
    band,
    cost: 0,
    gestures,
    segmenter: { maxLength: 190 },
  })
}

describe('operations of a decision', () => {
  test('cells within the band are those that a matrix has', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.nat(39), (length, wanted) => {
        const band = Math.min(wanted, length - 1)
        let cells = 0
        for (let i = 0; i < length; i++)
          for (let j = 0; j < length; j++) if (Math.abs(i - j) <= band) cells++
        expect(bandCells(length, band)).toBe(cells)
      }),
    )
  })

  test('of eight gestures with four templates, 32 points, six axes and five points of band', () => {
    expect(decisionOperations(library(4), 100)).toEqual({
      rows: 100,
      levelledRows: 0,
      points: 192,
      templates: 32,
      warpRows: 1024,
      warpCells: 32 * 322,
      warpValues: 32 * 322 * 6,
      features: 0,
      featurePoints: 0,
      six: true,
    })
  })

  test('of a model with levelled channels count every row once more', () => {
    const model = library(4)
    const normaliser = { ...model.normaliser, channelMask: 0b1111111111111 }
    expect(decisionOperations({ ...model, normaliser }, 100)).toMatchObject({
      levelledRows: 100,
      points: 32 * 13,
      six: false,
    })
  })

  test('each makes a decision dearer on every core', () => {
    const base = decisionOperations(library(4), 100)
    for (const costs of Object.values(MEASURED_COSTS)) {
      const total = decisionWork(base, costs).total
      for (const key of ['rows', 'levelledRows', 'points', 'warpCells', 'featurePoints'] as const) {
        const more = { ...base, [key]: base[key] + 1000 }
        expect(decisionWork(more, costs).total, key).toBeGreaterThan(total)
      }
    }
  })
})

describe('a budget', () => {
  test('adds up flash and RAM, and says where each figure comes from', () => {
    const model = library(4)
    const budget = budgetOf(model, part('m0-64'))
    const memory = countMemory(model)
    expect(budget.tables).toEqual({ value: 8 * 4 * 192 + 64, provenance: 'counted' })
    expect(budget.flash.value).toBe(budget.tables.value + MEASURED_COSTS.m0.codeBytes)
    expect(budget.buffers.value).toBe(memory.ringBytes + memory.queryBytes + memory.rowBytes)
    expect(budget.ram.value).toBe(budget.buffers.value + budget.state.value + budget.stack.value)
    expect(budget.code.provenance).toBe('measured')
    expect(budget.decisionMs.provenance).toBe('estimated')
    expect(budgetOf(model, part('m4f-256')).code.provenance).toBe('estimated')
  })

  test('takes half the time at twice the clock', () => {
    const slow = part('m0-64')
    const fast = { ...slow, clockHz: slow.clockHz * 2 }
    const ms = (one: Part) => budgetOf(library(4), one).decisionMs.value
    expect(ms(fast)).toBeCloseTo(ms(slow) / 2, 9)
  })

  test('by hand: idle duty is the work of a sample over the time of one', () => {
    const avr = part('avr-128')
    const { idleDuty } = budgetOf(library(4), avr)
    // 50 samples a second, one cycle a cycle.
    expect(idleDuty.value).toBeCloseTo((MEASURED_COSTS.avr.idle * 50) / 16e6, 9)
  })

  test('charge a day lies between waiting and computing all day', () => {
    for (const one of PARTS) {
      const { chargeMahADay } = budgetOf(library(4), one)
      expect(chargeMahADay.value).toBeGreaterThan(24 * one.waitingMa)
      expect(chargeMahADay.value).toBeLessThan(24 * one.activeMa)
    }
  })
})

describe('warnings', () => {
  const warningsOf = (model: ReturnType<typeof library>, one: Part) =>
    budgetWarnings(budgetOf(model, one), one)

  test('are none where everything fits', () => {
    expect(warningsOf(library(4, 24, 3), part('m4f-256'))).toEqual([])
  })

  test('an 8-bit part with 2 KB has too little RAM and time, and is offered what helps', () => {
    const small = part('avr-32')
    const model = library(4)
    const warned = warningsOf(model, small)
    expect(warned.map(({ what }) => what)).toEqual(expect.arrayContaining(['ram', 'time']))
    const offered = savings(model, small, warned)
    expect(offered.map(({ what }) => what)).toEqual(
      expect.arrayContaining(['templates', 'length', 'rate']),
    )
    const now = budgetOf(model, small)
    for (const saving of offered) {
      const helps = saving.ramBytes < now.ram.value || saving.decisionMs < now.decisionMs.value
      expect(helps, saving.what).toBe(true)
    }
  })

  test('a library that outgrows the flash is told to drop templates', () => {
    const part32 = part('m0-32')
    const warned = warningsOf(library(20), part32)
    expect(warned[0]).toMatchObject({ what: 'flash' })
    expect(warned[0]?.message).toMatch(/of 32\.0 KiB flash/)
    expect(savings(library(20), part32, warned).map(({ what }) => what)).toContain('templates')
  })
})

test('the part of a target has its clock and memory, and a core that such clocks have', () => {
  const target = { clockHz: 16e6, flashBytes: 32768, ramBytes: 2048 }
  expect(partOfTarget(target)).toMatchObject({ ...target, core: 'avr' })
  expect(partOfTarget({ ...target, clockHz: 48e6 }).core).toBe('m0')
  expect(partOfTarget({ ...target, clockHz: 120e6, flashBytes: 1 << 30 }).core).toBe('m3')
})

describe('the shape that a core affords', () => {
  const wanted = { length: 32, band: 5 }

  test('is the wanted one where there is time, and a shorter one where there is not', () => {
    expect(affordableShape('m0', wanted, 8, 6, 100)).toEqual(wanted)
    expect(affordableShape('m0', wanted, 32, 6, 100).length).toBeLessThan(32)
    expect(affordableShape('avr', wanted, 32, 6, 100).length).toBeLessThanOrEqual(
      affordableShape('m0', wanted, 32, 6, 100).length,
    )
  })

  test('is never longer than wanted, and the cheapest when nothing is enough', () => {
    expect(affordableShape('avr', { length: 12, band: 2 }, 512, 6, 900)).toEqual({
      length: 12,
      band: 2,
    })
    expect(affordableShape('avr', wanted, 512, 6, 900)).toEqual({ length: 16, band: 3 })
  })
})
