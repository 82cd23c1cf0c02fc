import { describe, expect, test } from 'vitest'
import { distanceTable } from '../../../src/shared/present/distances'
import { channelNames, growthOf } from '../../../src/shared/present/growth'
import { event, smallModel } from './present.fixture'

const warping = (grown: number[]) => ({
  path: grown.map((_, i): [number, number] => [i, i]),
  grown,
  distance: grown.at(-1) ?? 0,
  template: 0,
})

const kernel = { pools: 2, logWeight: 1, bases: [1, 1, 1], features: [] } as const

describe('distances that grow', () => {
  test('are told farthest first, each with its part in the decision', () => {
    const warpings = [warping([200, 540]), warping([400, 1310]), null]
    const growth = growthOf(event({}), warpings, smallModel())
    expect(growth?.lines.map(({ name, role }) => `${name} ${role}`)).toEqual([
      'Swing runner-up',
      'Ring nearest',
    ])
    expect(growth?.threshold).toBe(980)
    expect(growth?.top).toBeGreaterThanOrEqual(980)
  })

  test('have no threshold where kernel features decide with them, and none grows without templates', () => {
    const model = { ...smallModel(), kernel: { ...kernel, bases: [1, 1, 1], features: [] } }
    expect(growthOf(event({}), [warping([540]), null, null], model)?.threshold).toBeNull()
    expect(growthOf(event({}), [null, null, null], model)).toBeNull()
  })
})

test('channels are named in the order a segment holds them', () => {
  expect(channelNames(smallModel())).toEqual(['ax', 'ay', 'az', 'gx', 'gy', 'gz'])
  const levelled = { ...smallModel().normaliser, channelMask: 0b1_0000_0100_0001 }
  expect(channelNames({ ...smallModel(), normaliser: levelled })).toEqual([
    'ax',
    'vertical acceleration',
    'gravity z',
  ])
})

test('with kernel features a table holds the two distances the core decided between', () => {
  const model = { ...smallModel(), kernel: { ...kernel, bases: [1, 1, 1], features: [] } }
  const table = distanceTable(event({}), [17, 18, 19], model)
  expect(table?.rows.map(({ name, distance }) => [name, distance])).toEqual([
    ['Ring', 540],
    ['Swing', 1310],
  ])
  expect(distanceTable(event({}), null, model)?.rows).toHaveLength(2)
  const short = event({ reason: 'short', distance: null, gesture: null, runnerUp: null })
  expect(distanceTable(short, null, model)).toBeNull()
})
