import { batch, computed, type ReadonlySignal, signal } from '@preact/signals'
import { checkBoard } from '../../shared/board/check/check-board'
import type { CheckResult } from '../../shared/board/check/finding'
import { type BenchPart, benchStep, type StepId } from '../../shared/board/check/steps'
import { type ReadLog, readLog } from '../../shared/board/log/read-log'
import { RowReader } from '../../shared/board/log/row-reader'
import { FAULTS } from '../../shared/board/simulate/faults'
import { simulateBench } from '../../shared/board/simulate/trial'
import type { CsvMapping } from '../../shared/format/csv-mapping'
import { fail, ok, type Result } from '../../shared/model/result'
import type { Target } from '../../shared/model/target'
import { createRandom } from '../../shared/statistics/random'
import { BOARD_LINK } from '../../shared/words/en/board-link'
import type { BoardLink } from './link'

/** A step that is being logged over the link, or a file that is being read. */
export interface LoggingState {
  step: StepId
  rows: number
  /** 0 to 1. */
  share: number
}

export interface BenchState {
  parts: ReadonlySignal<BenchPart[]>
  /** Where the parts are from: a simulated board must say so wherever it shows. */
  simulated: ReadonlySignal<boolean>
  logging: ReadonlySignal<LoggingState | null>
  result: ReadonlySignal<CheckResult | null>
  /** Logs one step from the link, for as long as it takes; what was read before a loss stays. */
  logStep(step: StepId, mapping: CsvMapping): Promise<Result<null>>
  readFile(step: StepId, file: Blob, name: string, mapping: CsvMapping): Promise<Result<ReadLog>>
  stopLogging(): void
  remove(step: StepId): void
  clear(): void
  /** Fills the routine from a simulated board with the named fault, or a sound one. */
  simulate(faultName: string | null): void
}

/** A board that prints nothing for this long is silent, ms. */
const SILENCE_MS = 3000
const SHOW_EVERY_ROWS = 20

/** Stretches of a routine at the bench, kept for the visit. */
export class Bench implements BenchState {
  readonly parts = signal<BenchPart[]>([])
  readonly simulated = signal(false)
  readonly logging = signal<LoggingState | null>(null)
  readonly result: ReadonlySignal<CheckResult | null>
  readonly #target: () => Target | null
  readonly #link: BoardLink
  #stop: (() => void) | null = null
  #seed = 0

  constructor(target: () => Target | null, link: BoardLink) {
    this.#target = target
    this.#link = link
    this.result = computed(() => {
      const now = target()
      return now === null || this.parts.value.length === 0
        ? null
        : checkBoard(this.parts.value, now)
    })
  }

  logStep(step: StepId, mapping: CsvMapping): Promise<Result<null>> {
    const lastMs = 1000 * benchStep(step).seconds
    const options = { arrivalMs: () => performance.now() }
    const reader = new RowReader({ ...mapping, headerRows: 0 }, options)
    return new Promise((resolve) => {
      let startMs = 0
      const finish = () => {
        clearTimeout(timer)
        unlisten()
        this.#end()
        if (reader.count > 0) this.#put({ step, log: reader.build() })
        resolve(reader.count > 0 ? ok(null) : SILENT)
      }
      let timer = setTimeout(finish, SILENCE_MS)
      const unlisten = this.#link.listen((line) => {
        if (!reader.line(line)) return
        const now = performance.now()
        if (reader.count === 1) startMs = now
        const share = (now - startMs) / lastMs
        if (reader.count % SHOW_EVERY_ROWS === 1) {
          clearTimeout(timer)
          timer = setTimeout(finish, SILENCE_MS)
          this.logging.value = { step, rows: reader.count, share: Math.min(1, share) }
        }
        if (share >= 1) finish()
      })
      this.#begin(step, finish)
    })
  }

  async readFile(
    step: StepId,
    file: Blob,
    name: string,
    mapping: CsvMapping,
  ): Promise<Result<ReadLog>> {
    let stopped = false
    this.#begin(step, () => {
      stopped = true
    })
    const read = await readLog(piecesOf(file), mapping, {
      name,
      shouldStop: () => stopped,
      onProgress: (characters) => {
        this.logging.value = { step, rows: 0, share: Math.min(1, characters / file.size) }
      },
    })
    this.#end()
    if (read.ok) this.#put({ step, log: read.value.log })
    return read
  }

  stopLogging(): void {
    this.#stop?.()
  }

  remove(step: StepId): void {
    this.parts.value = this.parts.peek().filter((part) => part.step !== step)
  }

  clear(): void {
    this.parts.value = []
  }

  simulate(faultName: string | null): void {
    const target = this.#target()
    if (target === null) return
    const fault = FAULTS.find(({ name }) => name === faultName) ?? null
    const style = { units: 'count' as const, timed: true, ...fault?.needs }
    this.#seed++
    batch(() => {
      this.simulated.value = true
      this.parts.value = simulateBench(target, style, fault, createRandom(this.#seed))
    })
  }

  #begin(step: StepId, stop: () => void): void {
    this.#stop?.()
    this.logging.value = { step, rows: 0, share: 0 }
    this.#stop = stop
  }

  #end(): void {
    this.#stop = null
    this.logging.value = null
  }

  /** A real log never stands beside simulated ones. */
  #put(part: BenchPart): void {
    const before = this.simulated.peek() ? [] : this.parts.peek()
    batch(() => {
      this.simulated.value = false
      this.parts.value = [...before.filter(({ step }) => step !== part.step), part]
    })
  }
}

const SILENT = fail('bench/silent', BOARD_LINK.noLine)

/** Text of a file in pieces of some 64 KB; a file of any size fits in no memory and need not. */
async function* piecesOf(file: Blob): AsyncGenerator<string> {
  const reader = file.stream().getReader()
  const decoder = new TextDecoder()
  try {
    for (;;) {
      const { value, done } = await reader.read()
      if (done) break
      yield decoder.decode(value, { stream: true })
    }
    yield decoder.decode()
  } finally {
    await reader.cancel()
  }
}
