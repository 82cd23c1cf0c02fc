import { type ReadonlySignal, signal } from '@preact/signals'
import { choosePort, hasSerial, readLines, type SerialPortLike } from '../../board'
import { previewLog } from '../../shared/board/log/read-log'
import type { CsvPreview } from '../../shared/format/csv-import'
import { ok, type Result } from '../../shared/model/result'
import type { Target } from '../../shared/model/target'
import { BOARD_LINK } from '../../shared/words/en/board-link'

export type LinkState =
  | { state: 'off' }
  | { state: 'opening' }
  | { state: 'on' }
  /** The device went, or could not be opened. */
  | { state: 'lost'; message: string }

export interface BoardLink {
  /** Whether this browser can read a serial port. */
  possible: boolean
  state: ReadonlySignal<LinkState>
  /** Lines since the link was opened, and the last few of them. */
  lineCount: ReadonlySignal<number>
  tail: ReadonlySignal<string[]>
  /** What the columns seem to mean; null before enough lines came, or a sentence on why not. */
  preview: ReadonlySignal<CsvPreview | string | null>
  open(baudRate: number): Promise<Result<null>>
  close(): void
  /** Calls back for every line until the way to stop is called. */
  listen(onLine: (line: string) => void): () => void
}

/** Lines that the guess of the columns looks at. */
const GUESS_LINES = 12
const TAIL_LINES = 6
/** The screen follows in steps; 100 lines a second need no 100 renderings. */
const SHOW_EVERY_MS = 200

export function createBoardLink(
  target: () => Target | null,
  choose: () => Promise<Result<SerialPortLike>> = choosePort,
): BoardLink {
  const state = signal<LinkState>({ state: 'off' })
  const lineCount = signal(0)
  const tail = signal<string[]>([])
  const preview = signal<CsvPreview | string | null>(null)
  const listeners = new Set<(line: string) => void>()
  let abort: AbortController | null = null

  const begin = () => {
    let count = 0
    let shownMs = Number.NEGATIVE_INFINITY
    const recent: string[] = []
    return (line: string) => {
      count++
      recent.push(line)
      if (recent.length > GUESS_LINES) recent.shift()
      for (const listener of listeners) listener(line)
      const now = performance.now()
      if (now - shownMs < SHOW_EVERY_MS && count !== GUESS_LINES) return
      shownMs = now
      lineCount.value = count
      tail.value = recent.slice(-TAIL_LINES)
      if (count >= GUESS_LINES) preview.value = guess(recent, target(), preview.peek())
    }
  }

  return {
    possible: hasSerial(),
    state,
    lineCount,
    tail,
    preview,
    async open(baudRate) {
      const port = await choose()
      if (!port.ok) return port
      abort?.abort()
      const own = new AbortController()
      abort = own
      state.value = { state: 'opening' }
      lineCount.value = 0
      tail.value = []
      preview.value = null
      const onOpen = () => {
        state.value = { state: 'on' }
      }
      void readLines(port.value, { baudRate, onLine: begin(), signal: own.signal, onOpen }).then(
        (end) => {
          if (abort !== own) return
          if (!end.ok) state.value = { state: 'lost', message: end.message }
          else if (end.value.ended === 'stopped') state.value = { state: 'off' }
          else state.value = { state: 'lost', message: UNPLUGGED }
        },
      )
      return ok(null)
    },
    close() {
      abort?.abort()
    },
    listen(onLine) {
      listeners.add(onLine)
      return () => void listeners.delete(onLine)
    },
  }
}

const UNPLUGGED = BOARD_LINK.unplugged

/** The first good guess stays, so that a choice made by hand is not overwritten. */
function guess(
  lines: readonly string[],
  target: Target | null,
  before: CsvPreview | string | null,
): CsvPreview | string | null {
  if (target === null || (before !== null && typeof before !== 'string')) return before
  const found = previewLog(lines.join('\n'), target, BOARD_LINK.whatItPrints)
  return found.ok ? found.value : found.message
}
