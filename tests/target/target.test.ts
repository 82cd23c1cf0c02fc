import { afterAll, beforeAll, expect, test } from 'vitest'
import { AVR } from '../../src/build/target/avr'
import type { BoardBuild } from '../../src/build/target/build'
import { M0, M3 } from '../../src/build/target/cortex-m'
import { bundleOf, demoFirmware } from '../../src/build/target/demo-bundle'
import { boardFigures } from '../../src/build/target/figures'
import { HOST_BUILDS } from '../../src/build/target/host'
import { WASM } from '../../src/build/target/wasm'
import { Workshop } from '../../src/build/target/workshop'
import { expectedSelfTestLog } from '../../src/shared/firmware/self-test-log'
import { describeWithTools } from '../support/tools'

const RUN_MS = 300_000

let shop: Workshop
let expected: string

beforeAll(async () => {
  const input = await demoFirmware()
  expected = expectedSelfTestLog(input.trained.hash, input.vectors)
  shop = new Workshop(bundleOf(input))
}, RUN_MS)
afterAll(() => shop?.dispose())

for (const build of [...HOST_BUILDS, WASM]) {
  describeWithTools(`the demo's bundle built by ${build.name}`, build.tools, () => {
    test(
      'prints the event log of the phone, byte for byte',
      async () => {
        expect((await build.run(shop)).log).toBe(expected)
      },
      RUN_MS,
    )
  })
}

/** Largest figures a board may show; the reasons stand in DEVELOPERS.md, "Cost on the target". */
const LIMITS: [BoardBuild, Record<string, number>][] = [
  [M0, { m0_code_bytes: 8192, m0_table_bytes: 16_384 }],
  [M3, { m3_code_bytes: 8192, m3_table_bytes: 16_384 }],
  [AVR, { avr_table_bytes: 16_384 }],
]

for (const [board, limits] of LIMITS) {
  describeWithTools(`the demo's bundle on the emulated ${board.name}`, board.tools, () => {
    test(
      'prints the event log of the phone, byte for byte, within what it may cost',
      async () => {
        const { log, costs } = await board.run(shop)
        expect(log).toBe(expected)
        const figures = costs ? boardFigures(board, board.sizes(shop), costs) : []
        for (const [name, limit] of Object.entries(limits)) {
          const found = figures.find(({ figure }) => figure === name)?.value ?? Infinity
          expect(found, name).toBeLessThanOrEqual(limit)
        }
      },
      RUN_MS,
    )
  })
}
