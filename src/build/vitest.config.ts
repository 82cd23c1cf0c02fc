import { availableParallelism } from 'node:os'
import { relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import preact from '@preact/preset-vite'
import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

const root = fileURLToPath(new URL('../..', import.meta.url))
const cores = availableParallelism()

/** Real browsers on built pages. */
const BROWSERS = ['tests/browser/**/*.test.ts', 'tests/offline/**/*.test.ts']
/** What has no state of its own and touches no global, so that files may share a thread. */
const PURE = [
  'tests/architecture/**/*.test.ts',
  'tests/core/**/*.test.ts',
  'tests/shared/**/*.test.ts',
]

/**
 * Seconds of the test files that take longest, on two cores. They order the run and nothing else: a
 * long file begun last would run alone while the other cores rest. A file that is not named is short.
 */
const SECONDS: Record<string, number> = {
  'tests/browser/session.test.ts': 184,
  'tests/browser/every-screen.test.ts': 74,
  'tests/browser/main-job.test.ts': 70,
  'tests/browser/way-through.test.ts': 58,
  'tests/browser/pseudo-language.test.ts': 50,
  'tests/browser/stage.test.ts': 44,
  'tests/browser/storage.test.ts': 30,
  'tests/browser/faults-storage.test.ts': 28,
  'tests/browser/receive.test.ts': 27,
  'tests/browser/faults-recording.test.ts': 24,
  'tests/browser/faults-app.test.ts': 21,
  'tests/browser/worker-pool.test.ts': 20,
  'tests/browser/sensors.test.ts': 20,
  'tests/offline/updater.test.ts': 19,
  'tests/browser/serial.test.ts': 18,
  'tests/browser/faults-program.test.ts': 12,
  'tests/browser/collect.test.ts': 12,
  'tests/target/target.test.ts': 64,
  'tests/bench/soak.test.ts': 52,
  'tests/bench/commands.test.ts': 37,
  'tests/shared/firmware/bundle.test.ts': 19,
  'tests/shared/decide/advice.test.ts': 14,
  'tests/state/stage.test.ts': 12,
  'tests/state/recording.test.ts': 12,
  'tests/shared/training/kernel/train-kernel.test.ts': 10,
  'tests/shared/firmware/light.test.ts': 8,
  'tests/shared/teach/teach-cost.test.ts': 7,
  'tests/shared/firmware/loader.test.ts': 7,
  'tests/shared/collect/collection.test.ts': 6,
  'tests/shared/demo/demo-library.test.ts': 6,
  'tests/shared/board/board-check.test.ts': 6,
  'tests/core/reproducible.test.ts': 6,
  'tests/state/teach.test.ts': 6,
}

/** Test files of one group begin with the longest. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const seconds = ({ moduleId }: TestSpecification) =>
      SECONDS[relative(this.ctx.config.root, moduleId)] ?? 0
    const group = ({ project }: TestSpecification) => project.config.sequence.groupOrder
    return [...files].sort((a, b) => group(a) - group(b) || seconds(b) - seconds(a))
  }
}

export default defineConfig({
  root,
  plugins: [preact()],
  test: {
    // For a busy computer: nothing is timed, and each wait for a page has a limit of its own.
    testTimeout: 180_000,
    hookTimeout: 180_000,
    expect: { poll: { timeout: 15_000 } },
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        extends: true,
        test: {
          name: 'browsers',
          include: BROWSERS,
          // Movements are played in real time: with more than cores, readings come late and spoil takes.
          maxWorkers: cores,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'apart',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: [...BROWSERS, ...PURE],
          maxWorkers: cores,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          name: 'pure',
          include: PURE,
          pool: 'threads',
          isolate: false,
          maxWorkers: cores,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
})
