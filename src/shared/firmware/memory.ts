import { channelCount, type RecogniserModel } from '../model/recogniser-model'

/** Bytes a model takes on a board; the core's code comes on top of it. */
export interface MemoryCount {
  /** Constant tables in flash. */
  templateBytes: number
  gestureBytes: number
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
    ringBytes: ringSamples * SAMPLE_BYTES,
    queryBytes: values * 2,
    rowBytes: normaliser.length * 4,
  }
}
