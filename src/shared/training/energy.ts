import type { Core, CoreCut, EnergyStreams } from '../core/core'
import type { ModelSegmenter } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import type { Target } from '../model/target'
import { CUTS_ONLY, cuttingModelBytes } from './cutting-model'
import { judgeCut } from './judge-cut'
import type { PreparedTake } from './prepare'
import { runStream } from './stream'

/** Energies traced before, as long as the counts themselves are kept: counts are never altered. */
const traced = new WeakMap<Int16Array, { by: string; energy: Uint32Array }>()

/** What of a segmenter the energy hangs on. */
function weighing({ accelWeight, gyroWeight, accelLag, smoothShift }: ModelSegmenter): string {
  return [accelWeight, gyroWeight, accelLag, smoothShift].join(' ')
}

/**
 * Motion energy of every sample of recordings, as the core counts it. The rounds of an evaluation share
 * most recordings and all weights, so that each recording is traced once a thread.
 */
export function energiesOf(
  core: Core,
  target: Target,
  recordings: readonly Int16Array[],
  segmenter: ModelSegmenter,
): Uint32Array[] {
  const by = weighing(segmenter)
  let isLoaded = false
  return recordings.map((counts) => {
    const known = traced.get(counts)
    if (known?.by === by) return known.energy
    if (!isLoaded) core.load(cuttingModelBytes(target, { segmenter, normaliser: CUTS_ONLY }))
    isLoaded = true
    const samples = counts.length / AXES
    const energy = new Uint32Array(samples)
    runStream(core, counts, segmenter, { trace: { energy, phase: new Uint8Array(samples) } })
    traced.set(counts, { by, energy })
    return energy
  })
}

/** Recordings ready to be cut under many thresholds. */
export function streamsOf(
  core: Core,
  target: Target,
  recordings: readonly Int16Array[],
  segmenter: ModelSegmenter,
  withGravity = false,
): EnergyStreams {
  const energies = energiesOf(core, target, recordings, segmenter)
  const lengths = energies.map((energy) => energy.length)
  const samples = lengths.reduce((sum, length) => sum + length, 0)
  const energy = new Uint32Array(samples)
  const counts = withGravity ? new Int16Array(samples * AXES) : null
  let at = 0
  for (const [i, one] of energies.entries()) {
    energy.set(one, at)
    counts?.set(recordings[i]!, at * AXES)
    at += one.length
  }
  return { energy, counts, lengths }
}

/** What became of every take, cut by motion. */
export function cutStreamsOf(
  core: Core,
  takes: readonly Pick<PreparedTake, 'from' | 'to'>[],
  streams: EnergyStreams,
  segmenter: ModelSegmenter,
): ReturnType<typeof judgeCut<CoreCut>>[] {
  return core.cut(streams, segmenter).map((cuts, i) => judgeCut(cuts, takes[i]!))
}
