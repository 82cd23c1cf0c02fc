import { kernelByteLength } from '../format/kernel-bytes'
import { answersInOrder, type LightOwner } from '../light/library-light'
import type { Answer } from '../model/light'
import { channelCount, type RecogniserModel, rowValues } from '../model/recogniser-model'

/** Bytes a model takes on a board; the core's code comes on top of it. */
export interface MemoryCount {
  /** Constant tables in flash. */
  templateBytes: number
  gestureBytes: number
  kernelBytes: number
  /** Buffers in RAM. */
  ringBytes: number
  queryBytes: number
  rowBytes: number
}

/** `sizeof(mvw_gesture)`: two uint16_t and a uint32_t. */
const GESTURE_BYTES = 8
/** Six int16_t. */
const SAMPLE_BYTES = 12

/** Counted from the model, as the macros of `model.h` do; the same on every machine. */
export function countMemory(model: RecogniserModel): MemoryCount {
  const { segmenter, normaliser } = model
  const values = normaliser.length * channelCount(normaliser)
  const templates = model.gestures.reduce((sum, gesture) => sum + gesture.templates.length, 0)
  const ringSamples = segmenter.maxLength + segmenter.offHold + segmenter.accelLag + 1
  return {
    templateBytes: templates * values,
    gestureBytes: model.gestures.length * GESTURE_BYTES,
    kernelBytes: kernelByteLength(model.kernel, model.gestures.length),
    ringBytes: ringSamples * SAMPLE_BYTES,
    queryBytes: values * 2,
    rowBytes: rowValues(model) * 4,
  }
}

/**
 * Code of the light's four files of `core/`, bytes, as GCC 12 makes them for a Cortex-M0 at -Os; a
 * test holds it to the compiler at hand.
 */
export const LIGHT_CODE_BYTES = 1_810

/**
 * Code of teaching, bytes, as GCC 12 makes it for a Cortex-M0 at -Os; a test of the target holds it to
 * the compiler at hand.
 */
export const TEACH_CODE_BYTES = 1_620

/** `mvw_teach`, one slot with its template, and three segments, on a 32-bit part. */
export function teachRamBytes({ normaliser }: RecogniserModel): number {
  const values = normaliser.length * channelCount(normaliser)
  return 32 + 8 + 4 * values
}

/** Bytes the light takes besides its code, on a 32-bit part. */
export interface LightMemory {
  /** Effects, keyframes, tunes and vibrations. */
  tableBytes: number
  /** Lightness of 256 levels, part of the core. */
  lightnessBytes: number
  /** `answer` of `effects.h`. */
  stateBytes: number
}

/** Counted from a library's answers; sizes of the structs as compiled for a 32-bit part. */
export function countLightMemory(library: LightOwner): LightMemory {
  const answers = answersInOrder(library).map(({ answer }) => answer)
  const sum = (of: (answer: Answer) => number) => answers.reduce((all, one) => all + of(one), 0)
  const keys = sum(({ light }) => (light.kind === 'keys' ? light.keys.length : 0))
  const steps = sum(({ sound, vibration }) => sound.length + vibration.length)
  return {
    // mvw_light_effect 20, two effect_steps of 4, mvw_light_key 8, mvw_step 4, mvw_light_table 20.
    tableBytes: answers.length * (20 + 2 * 4) + Math.max(1, keys) * 8 + Math.max(2, steps) * 4 + 20,
    lightnessBytes: 512,
    stateBytes: 68,
  }
}
