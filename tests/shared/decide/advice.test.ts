import { beforeAll, describe, expect, test } from 'vitest'
import { finds, speaks } from '../../../src/build/bench/advice'
import { controlCase, PLANTED, plantedCase } from '../../../src/build/bench/planted/cases'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core } from '../../../src/shared/core/core'

let core: Core

beforeAll(async () => {
  core = await loadCoreForNode()
})

describe('advice on a library in which one thing is planted', () => {
  test.each(PLANTED.map((kind) => [kind.expected, kind] as const))('finds %s', async (_, kind) => {
    expect(await finds(core, kind, plantedCase(kind, 51))).toBe(true)
  })

  test('stays silent where movements differ and the sensor holds them', async () => {
    expect(await speaks(core, controlCase(51))).toBe(false)
  })
})
