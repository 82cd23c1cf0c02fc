import { type Vector, vectorNumber } from './vector'

/** A self-test log (FORMAT.md) taken apart. */
export interface SelfTestLog {
  modelHash: string
  /** Event log of each vector by its name, lines without ends, in the order printed. */
  vectors: Map<string, string[]>
  /** Ended by `done`. */
  whole: boolean
}

const FIRST = /^movewright (\d+)$/
const VERSION = 1

/** Lines of a log as a terminal shows it, without prompts, comments and empty ones. */
export function logLines(text: string): string[] {
  return text
    .split(/\r\n|\r|\n/)
    .map((line) => line.replace(/^>+/, '').trim())
    .filter((line) => line !== '' && !line.startsWith('#'))
}

/**
 * The last log in a text, as a board that was restarted prints several.
 * @returns null when the text holds none of this version
 */
export function readSelfTestLog(text: string): SelfTestLog | null {
  const lines = logLines(text)
  const starts = lines.map((line) => Number(line.match(FIRST)?.[1]) === VERSION)
  const start = starts.lastIndexOf(true)
  if (start < 0) return null
  const log: SelfTestLog = { modelHash: '', vectors: new Map(), whole: false }
  let open: string[] | null = null
  for (const line of lines.slice(start + 1)) {
    if (line === 'done') {
      log.whole = true
      break
    }
    const [, word, rest = ''] = line.match(/^(model|vector) (.*)$/) ?? []
    if (word === 'model') log.modelHash = rest
    else if (word === 'vector') {
      open = []
      log.vectors.set(rest, open)
    } else open?.push(line)
  }
  // Where a log breaks off its last line may be cut.
  if (!log.whole) open?.pop()
  return log
}

/** Name under which a vector is exported and run. */
export function vectorTitle(vector: Vector, index: number): string {
  return `${vectorNumber(index)}-${vector.name}`
}

/** The log that every build must print for these vectors, to the byte. */
export function expectedSelfTestLog(modelHash: string, vectors: readonly Vector[]): string {
  const runs = vectors.map((vector, index) => `vector ${vectorTitle(vector, index)}\n${vector.log}`)
  return `movewright ${VERSION}\nmodel ${modelHash}\n${runs.join('')}done\n`
}
