import { describe, expect, test } from 'vitest'
import type { TrainedModel } from '../../../src/shared/model/evaluation'
import { misfits, modelFacts, templateBytes } from '../../../src/shared/present/model-facts'
import { defaultTarget } from '../../../src/shared/target/default-target'
import { smallModel } from './present.fixture'

function trained(): TrainedModel {
  const model = smallModel()
  for (const gesture of model.gestures) gesture.templates = [new Int8Array(192), new Int8Array(192)]
  return {
    model,
    bytes: new Uint8Array(1300),
    hash: '00',
    tableBytes: 1300,
    ramBytes: 4096,
    usedTakeIds: [],
    uncutTakeIds: [],
    notes: [],
    distancePerLog: null,
    choice: '',
  }
}

describe('modelFacts', () => {
  test('template bytes are those of the tables themselves', () => {
    const { model } = trained()
    const held = model.gestures.flatMap((gesture) => gesture.templates)
    expect(templateBytes(model)).toBe(held.reduce((sum, template) => sum + template.length, 0))
  })

  test('the cells of a decision are those within the band, counted one by one', () => {
    const one = trained()
    const { length } = one.model.normaliser
    let cells = 0
    for (let i = 0; i < length; i++) {
      for (let j = 0; j < length; j++) if (Math.abs(i - j) <= one.model.band) cells += 1
    }
    const fact = modelFacts(one, defaultTarget()).find((entry) => entry.label.startsWith('Work'))!
    expect(fact.value.replaceAll('\u202f', '')).toBe(String(6 * cells * 6))
  })

  test('what only a build can tell is marked as estimated', () => {
    const facts = modelFacts(trained(), defaultTarget())
    const estimated = facts.filter((fact) => fact.known === 'estimated').map((fact) => fact.label)
    expect(estimated).toEqual(['Flash for tables', 'RAM'])
  })

  test('a model larger than its budget or than the RAM is said not to fit', () => {
    const target = defaultTarget()
    expect(misfits(trained(), target)).toEqual([])
    const small = { ...target, modelBudgetBytes: 1000, ramBytes: 2048 }
    expect(misfits(trained(), small)).toHaveLength(2)
  })
})
