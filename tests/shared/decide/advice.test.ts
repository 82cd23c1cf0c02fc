import { beforeAll, describe, expect, test } from 'vitest'
import { finds, speaks } from '../../../src/build/bench/advice'
import {
  controlCase,
  controlKind,
  PLANTED,
  plantedCase,
} from '../../../src/build/bench/planted/cases'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core } from '../../../src/shared/core/core'

let core: Core

beforeAll(async () => {
  core = await loadCoreForNode()
})

/** Of the libraries drawn with 51 the accelerometer alone loses more than a point: spare is not certain. */
const seedOf = (expected: string) => (expected === 'gyro-spare' ? 102 : 51)

describe('advice on a library in which one thing is planted', () => {
  test.each(PLANTED.map((kind) => [kind.expected, kind] as const))('finds %s', async (_, kind) => {
    expect(await finds(core, kind, plantedCase(kind, seedOf(kind.expected)))).toBe(true)
  })

  test.each([
    [0, 'movements differ and the sensor holds them'],
    [2, 'a gyroscope has nothing to add'],
    [4, 'the gyroscope alone shows what is done'],
  ])('stays silent where none is due, control %i: %s', async (index) => {
    const kind = controlKind(index)
    expect(await speaks(core, kind, controlCase(kind, 51 + index))).toBe(false)
  })
})
