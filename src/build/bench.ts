import type { Core } from '../shared/core/core'
import { benchAccuracy } from './bench/accuracy'
import { benchAdvice } from './bench/advice'
import { benchBoardCheck } from './bench/board-check'
import type { BenchResult } from './bench/figure'
import { benchFuzz } from './bench/fuzz'
import { benchGrip } from './bench/grip'
import { benchKills } from './bench/kills'
import { benchSensor } from './bench/sensor-sweep'
import { benchSize } from './bench/size'
import { benchSoak } from './bench/soak'
import { benchSpeed } from './bench/speed'
import { loadCoreForNode } from './load-core'

const BENCHES: Record<string, (core: Core) => Promise<BenchResult>> = {
  accuracy: async (core) =>
    together(
      await benchAccuracy(core),
      benchBoardCheck(),
      await benchGrip(core),
      await benchAdvice(core),
      await benchSensor(core),
    ),
  speed: benchSpeed,
  size: benchSize,
  kills: benchKills,
  fuzz: benchFuzz,
  soak: benchSoak,
}

const bench = BENCHES[process.argv[2] ?? '']
if (bench === undefined) {
  process.stderr.write(`npm run bench -- ${Object.keys(BENCHES).join('|')}\n`)
  process.exitCode = 1
} else {
  const { figures, skipped } = await bench(await loadCoreForNode())
  for (const figure of figures) process.stdout.write(`${JSON.stringify(figure)}\n`)
  for (const sentence of skipped) process.stderr.write(`skipped: ${sentence}\n`)
}

function together(...parts: BenchResult[]): BenchResult {
  return {
    figures: parts.flatMap(({ figures }) => figures),
    skipped: parts.flatMap(({ skipped }) => skipped),
  }
}
