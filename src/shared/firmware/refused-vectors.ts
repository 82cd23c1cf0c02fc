import { encodeModel } from '../format/model-bytes'
import { channelCount, type RecogniserModel } from '../model/recogniser-model'
import type { VectorInput } from './vector'

const WHOLE_MEMORY = 0xffffffff

/**
 * Models, boards and buffers that must be refused, each just beyond what is still taken, beside what
 * is just within: a status each.
 */
export function refusedVectors(model: RecogniserModel): VectorInput[] {
  return [...boardVectors(model), ...memoryVectors(model), ...bytesVectors(model)]
}

function boardVectors({ board }: RecogniserModel): VectorInput[] {
  const scaled = (value: number, percent: number) => Math.ceil((value * (100 + percent)) / 100)
  const rate = (percent: number) => ({
    ...board,
    rateMillihertz: scaled(board.rateMillihertz, percent),
  })
  return [
    one('refused-version', 'A model of another version is refused.', { version: 65535 }),
    one('refused-rate', 'A board 6 % too fast is refused.', { board: rate(6) }),
    one('taken-rate', 'A board 4 % too fast is taken.', { board: rate(4) }),
    one('refused-accel-range', "Twice the accelerometer's range is refused.", {
      board: { ...board, accelNgPerLsb: scaled(board.accelNgPerLsb, 100) },
    }),
    one('refused-gyro-range', "Half again the gyroscope's range is refused.", {
      board: { ...board, gyroNdpsPerLsb: scaled(board.gyroNdpsPerLsb, 50) },
    }),
  ]
}

/** Each buffer in turn one entry too small. */
function memoryVectors({ segmenter, normaliser }: RecogniserModel): VectorInput[] {
  const enough = { ringSamples: WHOLE_MEMORY, queryValues: WHOLE_MEMORY, rowValues: WHOLE_MEMORY }
  const ringSamples = segmenter.maxLength + segmenter.offHold + segmenter.accelLag
  const queryValues = normaliser.length * channelCount(normaliser) - 1
  const rowValues = normaliser.length - 1
  return [
    one('refused-ring', 'A ring one sample too small is refused.', {
      memory: { ...enough, ringSamples },
    }),
    one('refused-query', 'A query buffer one value too small is refused.', {
      memory: { ...enough, queryValues },
    }),
    one('refused-row', 'A warping row one word too small is refused.', {
      memory: { ...enough, rowValues },
    }),
  ]
}

/** A model small enough for any board, whole and damaged, through `mvw_model_read()`. */
function bytesVectors(model: RecogniserModel): VectorInput[] {
  const tiny = tinyModel(model)
  const whole = encodeModel(tiny)
  const altered = whole.slice()
  altered[altered.length - 6]! ^= 1
  const otherVersion = whole.slice()
  otherVersion[4]! ^= 0x80
  const read = (name: string, why: string, bytes: Uint8Array): VectorInput => ({
    name: `bytes-${name}`,
    why,
    from: 'a model of one gesture and one template of four values',
    steps: [{ read: bytes }],
  })
  return [
    read('truncated', 'Model bytes that lack the last one are refused.', whole.slice(0, -1)),
    read('empty', 'Model bytes of length 3 are refused.', whole.slice(0, 3)),
    read('too-long', 'Model bytes with one too many are refused.', Uint8Array.from([...whole, 0])),
    read('altered', 'Model bytes with one bit turned are refused by their check.', altered),
    read('version', 'Model bytes of another version are refused, whatever follows.', otherVersion),
    read(
      'range',
      'Model bytes with a right check and a warping window wider than the template are refused.',
      encodeModel({ ...tiny, band: tiny.normaliser.length }),
    ),
    read('whole', 'The same model bytes undamaged are taken.', whole),
  ]
}

/** One gesture with one template of four points on one axis. */
function tinyModel(model: RecogniserModel): RecogniserModel {
  const template = Int8Array.of(0, 32, -32, 0)
  const gesture = { id: 'tiny', name: 'tiny', threshold: 100, templates: [template] }
  return {
    ...model,
    normaliser: { ...model.normaliser, length: 4, channelMask: 1 },
    band: 1,
    gestures: [{ ...gesture, templateTakeIds: [''] }],
  }
}

function one(name: string, why: string, change: Partial<VectorInput>): VectorInput {
  const from = 'four samples of nought'
  return { name, why, from, steps: [{ samples: new Int16Array(4 * 6) }], ...change }
}
