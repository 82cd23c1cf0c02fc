import type { Tool } from '../tools'
import type { RecogniserSize } from './elf'
import type { SelfTestOutput } from './self-test-output'
import type { Workshop } from './workshop'

/** For size; the core asks for speed itself where it counts. */
export const OPTIMISE = '-Os'

/** Functions that `c/cost_bench.c` measures. */
export const BENCH_WRAPS = ['mvw_resample', 'mvw_normalise', 'mvw_kernel_scores'].map(
  (name) => `-Wl,--wrap=${name}`,
)

/** Sources of the bundle that every self-test has. */
export const SELF_TEST_BODY = ['vector_run.c', 'vector_teach.c', 'event_log.c'].map(
  (file) => `selftest/${file}`,
)

/** One way to build the bundle and run its vectors. */
export interface Build {
  /** Word for figures and messages. */
  name: string
  tools: Tool[]
  /** @throws Error when it does not compile, run or end */
  run(shop: Workshop): SelfTestOutput | Promise<SelfTestOutput>
}

/** A build for an emulated board, on which sizes and work are measured too. */
export interface BoardBuild extends Build {
  workUnit: 'instructions' | 'cycles'
  /** Of that unit in a tick of the counter. */
  workPerTick: number
  sizes(shop: Workshop): RecogniserSize
  /** What `c/cost_bench.c` prints. */
  bench(shop: Workshop): string
}
