import type { OperationCosts } from '../shared/budget/costs'
import { expectedSelfTestLog } from '../shared/firmware/self-test-log'
import { AVR } from './target/avr'
import type { BoardBuild, Build } from './target/build'
import { compareLogs } from './target/compare-logs'
import { M0, M3 } from './target/cortex-m'
import { measureCosts } from './target/cost-table'
import { bundleOf, demoFirmware } from './target/demo-bundle'
import { boardFigures, type Figure } from './target/figures'
import { HOST_BUILDS } from './target/host'
import { WASM } from './target/wasm'
import { Workshop } from './target/workshop'
import { writeCosts } from './target/write-costs'
import { installLine, missingTools } from './tools'

/**
 * `npm run target`: exports the demo library's firmware bundle, builds it for every target there is
 * an emulator for, runs the vectors on each and compares the event logs to the byte; prints sizes and
 * work as JSON lines. Exit status 1 when a build fails or differs, or with CI=true lacks its tools.
 * `npm run target -- --write` also measures what operations cost and writes the budget's table.
 */
const BUILDS: (Build | BoardBuild)[] = [...HOST_BUILDS, WASM, M0, M3, AVR]

const writing = process.argv.includes('--write')
const table: Record<string, OperationCosts> = {}
const input = await demoFirmware()
const expected = expectedSelfTestLog(input.trained.hash, input.vectors)
const shop = new Workshop(bundleOf(input))
try {
  for (const build of BUILDS) await prove(build)
  if (writing) writeCosts(table)
} finally {
  shop.dispose()
}

async function prove(build: Build | BoardBuild): Promise<void> {
  const missing = missingTools(build.tools)
  if (missing.length > 0) {
    console.error(`${build.name}: skipped; to run it: ${installLine(missing)}`)
    if (process.env.CI === 'true') process.exitCode = 1
    return
  }
  try {
    const { log, costs } = await build.run(shop)
    const { agreed, of, difference } = compareLogs(log, expected)
    print({ figure: `${build.name}_vectors_agreed`, value: agreed, unit: `of ${of} vectors` })
    if (difference !== null) fault(build, difference)
    if (!costs || !('sizes' in build)) return
    const size = build.sizes(shop)
    boardFigures(build, size, costs).forEach(print)
    if (writing) table[build.name] = measureCosts(build, input, size, costs)
  } catch (error) {
    fault(build, error instanceof Error ? error.message : String(error))
  }
}

function fault(build: Build, words: string): void {
  console.error(`${build.name}: ${words}`)
  process.exitCode = 1
}

function print(figure: Figure): void {
  console.log(JSON.stringify(figure))
}
