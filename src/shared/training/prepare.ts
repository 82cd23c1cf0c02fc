import { conditionRecording } from '../conditioning/condition-recording'
import { StreamConditioner } from '../conditioning/stream-conditioner'
import type {
  Background,
  FullLibrary,
  Gesture,
  RecordingWithSamples,
  Take,
  TrainingSettings,
  Trim,
} from '../model/library'
import { AXES, type SampleBlock } from '../model/sample'
import type { Target } from '../model/target'
import { addRest } from './rest-tail'

/** A take as the board would have read it. */
export interface PreparedTake {
  take: Take
  /** Index in `Prepared.gestures`. */
  gesture: number
  /** n × 6 counts, with rest added at the end (see addRest). */
  counts: Int16Array
  /** Samples that count, [from, to): all of them unless the take is trimmed. */
  from: number
  to: number
  /** The take has no trim: nothing says where in it a button was down. */
  whole?: boolean
}

export interface PreparedBackground {
  background: Background
  /** n × 6 counts. */
  counts: Int16Array
}

/** A library conditioned to its target. Nothing in it is learned, so folds may share it. */
export interface Prepared {
  target: Target
  settings: TrainingSettings
  gestures: Gesture[]
  takes: PreparedTake[]
  backgrounds: PreparedBackground[]
}

/** A recording's samples as the board would have read them, and what of a take counts. */
export type Conditioned = Pick<PreparedTake, 'counts' | 'from' | 'to' | 'whole'>

/** Conditions every recording that is not deleted and whose gesture is still in the library. */
export function prepareLibrary(full: FullLibrary): Prepared {
  return collectPrepared(full, (one) => conditionOne(one, full.library.target))
}

/** For a take with rest behind its end; a background counts as a whole. */
export function conditionOne(
  { recording, samples }: RecordingWithSamples,
  target: Target,
): Conditioned {
  const { counts } = conditionRecording(samples, target, recording.device.accelSign)
  if (recording.kind === 'background') return { counts, from: 0, to: 0 }
  const window = windowOf(recording.trim, samples, target, counts.length / AXES)
  return { counts: addRest(counts, target.rateHz), ...window }
}

/** The same takes and backgrounds in the same order without their counts: enough to plan with. */
export function outlineLibrary(full: FullLibrary): Prepared {
  return collectPrepared(full, () => ({ counts: new Int16Array(), from: 0, to: 0 }))
}

/** The library with whatever conditions a recording; asked once for each that is used, in order. */
export function collectPrepared(
  full: FullLibrary,
  condition: (one: RecordingWithSamples) => Conditioned,
): Prepared {
  const { gestures, target, training } = full.library
  const prepared: Prepared = {
    target,
    settings: training,
    gestures,
    takes: [],
    backgrounds: [],
  }
  const indexOf = new Map(gestures.map((gesture, index) => [gesture.id, index]))
  for (const one of full.recordings) {
    const { recording, samples } = one
    if (recording.deletedAt !== null || samples.tMs.length < 2) continue
    if (recording.kind === 'background') {
      prepared.backgrounds.push({ background: recording, counts: condition(one).counts })
      continue
    }
    const gesture = indexOf.get(recording.gestureId)
    if (gesture !== undefined) prepared.takes.push({ take: recording, gesture, ...condition(one) })
  }
  return prepared
}

/**
 * What a trim is in conditioned samples.
 * @param length of the recording in conditioned samples
 */
export function windowOf(
  trim: Trim | null,
  samples: SampleBlock,
  target: Target,
  length: number,
): Omit<Conditioned, 'counts'> {
  if (trim === null) return { from: 0, to: length, whole: true }
  // Long pauses are left out of the counts, so times are asked for and not computed from the rate.
  const conditioner = new StreamConditioner(target, 1)
  conditioner.push(samples)
  conditioner.flush()
  const firstAt = (ms: number) => {
    let index = 0
    while (index < length && conditioner.timeOfMs(index) < ms) index++
    return index
  }
  return { from: firstAt(trim.startMs), to: firstAt(trim.endMs) }
}
