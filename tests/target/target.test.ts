import { afterAll, beforeAll, expect, test } from 'vitest'
import { AVR } from '../../src/build/target/avr'
import type { BoardBuild } from '../../src/build/target/build'
import { M0, M3 } from '../../src/build/target/cortex-m'
import { bundleOf, demoFirmware } from '../../src/build/target/demo-bundle'
import { boardFigures } from '../../src/build/target/figures'
import { HOST_BUILDS } from '../../src/build/target/host'
import type { Costs } from '../../src/build/target/self-test-output'
import { WASM } from '../../src/build/target/wasm'
import { Workshop } from '../../src/build/target/workshop'
import { type CoreKind, decisionWork } from '../../src/shared/budget/costs'
import { MEASURED_COSTS } from '../../src/shared/budget/measured-costs'
import { decisionOperations } from '../../src/shared/budget/operations'
import { TEACH_CODE_BYTES, teachRamBytes } from '../../src/shared/firmware/memory'
import { expectedSelfTestLog } from '../../src/shared/firmware/self-test-log'
import type { RecogniserModel } from '../../src/shared/model/recogniser-model'
import { describeWithTools } from '../support/tools'

const RUN_MS = 300_000

let shop: Workshop
let expected: string
let model: RecogniserModel

beforeAll(async () => {
  const input = await demoFirmware()
  model = input.trained.model
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

/** The budget's table is of this core: sizes and samples agree, and no decision is dearer than said. */
function expectBudget(board: BoardBuild, costs: Costs, codeBytes: number): void {
  const table = MEASURED_COSTS[board.name as CoreKind]
  const idle = (costs.idle.ticks / costs.idle.samples) * board.workPerTick
  const dearest = Math.max(...costs.decisions) * board.workPerTick
  const most = decisionWork(decisionOperations(model), table).total
  expect(Math.abs(codeBytes / table.codeBytes - 1)).toBeLessThan(0.1)
  expect(Math.abs(idle / table.idle - 1)).toBeLessThan(0.1)
  expect(dearest).toBeLessThan(most * (1 + table.fitError))
  expect(dearest).toBeGreaterThan(most / 2)
}

/** Largest figures a board may show: DEVELOPERS.md, "Cost on the target", with a tenth to spare. */
const LIMITS: [BoardBuild, Record<string, number>][] = [
  [
    M0,
    {
      m0_code_bytes: 8192,
      m0_table_bytes: 16_384,
      m0_ram_bytes: 3200,
      m0_decision_instructions: 880_000,
      teach_code_bytes: TEACH_CODE_BYTES * 1.1,
    },
  ],
  [M3, { m3_code_bytes: 8192, m3_table_bytes: 16_384, m3_decision_instructions: 630_000 }],
  [AVR, { avr_table_bytes: 16_384, avr_ram_bytes: 3200, avr_decision_cycles: 3_300_000 }],
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
        const teachBytes = figures.find(({ figure }) => figure === 'teach_state_bytes')?.value
        if (board === M0) expect(teachBytes).toBe(teachRamBytes(model))
        if (costs) expectBudget(board, costs, board.sizes(shop).codeBytes)
      },
      RUN_MS,
    )
  })
}
