import type { ModelSegmenter } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import { CORE_REASONS, type CoreCut, type EnergyStreams } from './core'
import { checkStatus } from './status'
import type { CoreExports, WasmMemory } from './wasm-memory'

/** Words of a segment from `cut`, and of one given to `normalise`. */
const SEGMENT_WORDS = 8
const FACT_WORDS = 5

/** `Core.cut` over `src/core/port/cut_wasm.c`. */
export function cutStreams(
  exports: CoreExports,
  memory: WasmMemory,
  { energy, counts, lengths }: EnergyStreams,
  segmenter: ModelSegmenter,
  phases?: Uint8Array,
): CoreCut[][] {
  const mark = memory.mark()
  const put = (words: ArrayLike<number>) => {
    const at = memory.take(words.length * 4)
    memory.uint32(at, words.length).set(words)
    return at
  }
  const [given, sizes, words] = [put(energy), put(lengths), put(wordsOf(segmenter))]
  const samples = counts === null ? 0 : memory.putInt16(counts)
  const told = phases ? memory.take(energy.length) : 0
  const most = Math.ceil(energy.length / 2) + lengths.length
  const out = memory.take(most * SEGMENT_WORDS * 4)
  const found = exports.cut(given, samples, sizes, lengths.length, words, told, out)
  const cuts = lengths.map((): CoreCut[] => [])
  const segments = memory.uint32(out, found * SEGMENT_WORDS)
  for (let at = 0; at < segments.length; at += SEGMENT_WORDS) {
    const gravity = counts !== null && segments[at + 4] === 1
    cuts[segments[at]!]!.push({
      event: {
        start: segments[at + 1]!,
        end: segments[at + 2]!,
        reason: CORE_REASONS[segments[at + 3]!]!,
      },
      gravity: gravity ? new Int16Array(segments.subarray(at + 5, at + SEGMENT_WORDS)) : null,
    })
  }
  phases?.set(memory.uint8(told, phases.length))
  memory.release(mark)
  return cuts
}

/** `Core.normalise` over `src/core/port/wasm.c`. */
export function normaliseSegments(
  exports: CoreExports,
  memory: WasmMemory,
  segments: readonly { counts: Int16Array; gravity: Int16Array | null }[],
  querySize: number,
): Int8Array[] {
  const mark = memory.mark()
  const total = segments.reduce((sum, { counts }) => sum + counts.length, 0)
  const samples = memory.take(total * 2)
  const facts = memory.take(segments.length * FACT_WORDS * 4)
  const queries = memory.take(segments.length * querySize)
  const [counted, told] = [
    memory.int16(samples, total),
    memory.uint32(facts, segments.length * FACT_WORDS),
  ]
  let from = 0
  for (const [i, { counts, gravity }] of segments.entries()) {
    counted.set(counts, from)
    from += counts.length
    told[i * FACT_WORDS] = counts.length / AXES
    told[i * FACT_WORDS + 1] = gravity ? 1 : 0
    if (gravity) told.set(gravity, i * FACT_WORDS + 2)
  }
  const status = exports.normalise(samples, facts, segments.length, queries)
  const all = memory.int8(queries, segments.length * querySize)
  memory.release(mark)
  checkStatus(status)
  return segments.map((_, i) => all.slice(i * querySize, (i + 1) * querySize))
}

function wordsOf(segmenter: ModelSegmenter): number[] {
  const { onThreshold, offThreshold, onHold, offHold, minLength, maxLength } = segmenter
  const { preRoll, refractory, restShift } = segmenter
  return [
    ...[onThreshold, offThreshold, onHold, offHold, minLength, maxLength],
    ...[preRoll, refractory, restShift],
  ]
}
