import { channelCount, MODEL_VERSION, type RecogniserModel } from '../model/recogniser-model'
import { fail, ok, type Result } from '../model/result'
import { MODEL_FILE } from '../words/en/model-file'
import { ByteReader } from './byte-reader'
import { crc32 } from './crc32'
import { FEATURE_BYTES, kernelByteLength, kernelTable, readKernel } from './kernel-bytes'

const MAGIC = [0x4d, 0x56, 0x57, 0x4d] // MVWM
const FIXED_BYTES = 76
const GESTURE_BYTES = 8
const CRC_BYTES = 4
const FLAG_ROLL_ALIGN = 1
const FLAG_BUTTON = 2

type FieldSize = 1 | 2 | 4

/** Fields behind the version, in order; the one place on this side that knows the layout. */
function fieldsOf(model: RecogniserModel): [value: number, bytes: FieldSize][] {
  const { board, segmenter: s, normaliser: n } = model
  const templateCount = model.gestures.reduce((sum, g) => sum + g.templates.length, 0)
  return [
    [(model.rollAlign ? FLAG_ROLL_ALIGN : 0) | (model.button ? FLAG_BUTTON : 0), 2],
    [board.rateMillihertz, 4],
    [board.accelNgPerLsb, 4],
    [board.gyroNdpsPerLsb, 4],
    [s.accelWeight, 2],
    [s.gyroWeight, 2],
    [s.onThreshold, 4],
    [s.offThreshold, 4],
    [s.onHold, 2],
    [s.offHold, 2],
    [s.minLength, 2],
    [s.maxLength, 2],
    [s.preRoll, 2],
    [s.refractory, 2],
    [s.accelLag, 1],
    [s.smoothShift, 1],
    [s.restShift, 1],
    [n.length, 1],
    [n.channelMask, 2],
    [n.centreMask, 1],
    [n.scaleMode, 1],
    ...n.gain.map((gain): [number, FieldSize] => [gain, 1]),
    [n.gravityGain, 1],
    [n.floor[0], 2],
    [n.floor[1], 2],
    [model.longAxis, 1],
    [model.rollMinPercent, 1],
    [model.band, 1],
    [model.cost, 1],
    [model.marginPercent, 1],
    [model.gestures.length, 1],
    [templateCount, 2],
    [model.kernel?.features.length ?? 0, 2],
    [model.kernel?.pools ?? 0, 1],
    [model.kernel?.logWeight ?? 0, 2],
  ]
}

/** Bytes that a model takes: what the core's tables come to, 80 bytes of fields and check aside. */
export function modelByteLength(model: RecogniserModel): number {
  const points = model.normaliser.length * channelCount(model.normaliser)
  const templates = model.gestures.reduce((sum, g) => sum + g.templates.length, 0)
  return (
    FIXED_BYTES +
    GESTURE_BYTES * model.gestures.length +
    templates * points +
    kernelByteLength(model.kernel, model.gestures.length) +
    CRC_BYTES
  )
}

/**
 * Writes the model as `mvw_model_read` reads it: little-endian, CRC-32 at the end (FORMAT.md).
 * @throws RangeError when a value is not an integer that its field can hold.
 */
export function encodeModel(model: RecogniserModel): Uint8Array {
  const bytes = new Uint8Array(modelByteLength(model))
  const view = new DataView(bytes.buffer)
  let at = 0
  const put = (value: number, size: FieldSize) => {
    if (!Number.isInteger(value) || value < 0 || value >= 2 ** (8 * size))
      throw new RangeError(`model field at byte ${at} cannot hold ${value}`)
    if (size === 1) view.setUint8(at, value)
    else if (size === 2) view.setUint16(at, value, true)
    else view.setUint32(at, value, true)
    at += size
  }
  for (const byte of MAGIC) put(byte, 1)
  put(MODEL_VERSION, 2)
  for (const [value, size] of fieldsOf(model)) put(value, size)
  let first = 0
  for (const gesture of model.gestures) {
    put(first, 2)
    put(gesture.templates.length, 2)
    put(gesture.threshold, 4)
    first += gesture.templates.length
  }
  const values = model.normaliser.length * channelCount(model.normaliser)
  for (const gesture of model.gestures)
    for (const template of gesture.templates) {
      if (template.length !== values)
        throw new RangeError(`a template has ${template.length} values instead of ${values}`)
      new Int8Array(bytes.buffer).set(template, at)
      at += values
    }
  if (model.kernel !== null) {
    const table = kernelTable(model.kernel, model.gestures.length)
    bytes.set(table, at)
    at += table.length
  }
  put(crc32(bytes.subarray(0, at)), 4)
  return bytes
}

/** Names that the bytes do not carry. */
export interface GestureName {
  id: string
  name: string
  templateTakeIds: string[]
}

/** The fields behind the version, without gestures, in the order of fieldsOf. */
function readFields(r: ByteReader): RecogniserModel {
  const flags = r.u16()
  return {
    rollAlign: (flags & FLAG_ROLL_ALIGN) !== 0,
    button: (flags & FLAG_BUTTON) !== 0,
    board: { rateMillihertz: r.u32(), accelNgPerLsb: r.u32(), gyroNdpsPerLsb: r.u32() },
    segmenter: {
      accelWeight: r.u16(),
      gyroWeight: r.u16(),
      onThreshold: r.u32(),
      offThreshold: r.u32(),
      onHold: r.u16(),
      offHold: r.u16(),
      minLength: r.u16(),
      maxLength: r.u16(),
      preRoll: r.u16(),
      refractory: r.u16(),
      accelLag: r.u8(),
      smoothShift: r.u8(),
      restShift: r.u8(),
    },
    normaliser: {
      length: r.u8(),
      channelMask: r.u16(),
      centreMask: r.u8(),
      scaleMode: r.u8() as 0 | 1 | 2,
      gain: [r.u8(), r.u8(), r.u8(), r.u8(), r.u8(), r.u8()],
      gravityGain: r.u8(),
      floor: [r.u16(), r.u16()],
    },
    longAxis: r.u8() as 0 | 1 | 2,
    rollMinPercent: r.u8(),
    band: r.u8(),
    cost: r.u8() as 0 | 1,
    marginPercent: r.u8(),
    gestures: [],
    kernel: null,
  }
}

/**
 * Reads what encodeModel wrote. Ranges are not checked here: the core checks them when it loads.
 * Codes: 'model/bytes', 'model/version'.
 */
export function decodeModel(bytes: Uint8Array, names: GestureName[] = []): Result<RecogniserModel> {
  const damaged = fail('model/bytes', MODEL_FILE.damaged)
  const end = bytes.length - CRC_BYTES
  if (end < FIXED_BYTES || MAGIC.some((byte, i) => bytes[i] !== byte)) return damaged
  const reader = new ByteReader(bytes, MAGIC.length)
  const version = reader.u16()
  if (version !== MODEL_VERSION)
    return fail('model/version', MODEL_FILE.otherVersion(version, MODEL_VERSION))
  if (new ByteReader(bytes, end).u32() !== crc32(bytes.subarray(0, end))) return damaged

  const model = readFields(reader)
  const gestureCount = reader.u8()
  const templateCount = reader.u16()
  const counts = { features: reader.u16(), pools: reader.u8(), logWeight: reader.u16() }
  const values = model.normaliser.length * channelCount(model.normaliser)
  let templateAt = FIXED_BYTES + GESTURE_BYTES * gestureCount
  const kernelAt = templateAt + templateCount * values
  const record = FEATURE_BYTES + counts.pools * gestureCount
  const kernelBytes = counts.features === 0 ? 0 : 4 * gestureCount + counts.features * record
  if (end !== kernelAt + kernelBytes) return damaged
  for (let i = 0; i < gestureCount; i++) {
    reader.u16()
    const count = reader.u16()
    const threshold = reader.u32()
    if (templateAt + count * values > end) return damaged
    const templates = Array.from({ length: count }, () => {
      const template = new Int8Array(bytes.slice(templateAt, templateAt + values).buffer)
      templateAt += values
      return template
    })
    const name = names[i] ?? { id: `g${i}`, name: MODEL_FILE.gesture(i + 1), templateTakeIds: [] }
    model.gestures.push({ ...name, threshold, templates })
  }
  model.kernel = readKernel(new ByteReader(bytes, kernelAt), counts, gestureCount)
  return ok(model)
}
