import { inflateSync } from 'node:zlib'
import { fail, ok, type Result } from '../../shared/model/result'

/** A real two-dimensional array as a MAT file holds it: column after column. */
export interface MatArray {
  name: string
  rows: number
  columns: number
  values: Float64Array
}

// Data types of "MAT-File Format", The MathWorks, table 1-1.
const MI_MATRIX = 14
const MI_COMPRESSED = 15
const HEADER_BYTES = 128

interface Element {
  type: number
  data: DataView
  /** Offset of the next element. */
  next: number
}

/**
 * Real numeric matrices of a little-endian level 5 MAT file; everything else in it is passed over.
 */
export function parseMat5(bytes: Uint8Array, file: string): Result<MatArray[]> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (view.byteLength < HEADER_BYTES || view.getUint16(126, true) !== 0x4d49) {
    return fail('mat/header', `${file} is not a little-endian level 5 MAT file.`)
  }
  const arrays: MatArray[] = []
  try {
    for (let at = HEADER_BYTES; at + 8 <= view.byteLength; ) {
      const element = readElement(view, at)
      const array = readMatrix(unpack(element))
      if (array !== null) arrays.push(array)
      // Compressed elements are the one kind that is not padded to eight bytes.
      at = element.type === MI_COMPRESSED ? at + 8 + element.data.byteLength : element.next
    }
  } catch {
    return fail('mat/damaged', `${file} is cut short or damaged.`)
  }
  return ok(arrays)
}

function unpack(element: Element): Element {
  if (element.type !== MI_COMPRESSED) return element
  const { buffer, byteOffset, byteLength } = element.data
  const inflated = inflateSync(new Uint8Array(buffer, byteOffset, byteLength))
  return readElement(new DataView(inflated.buffer, inflated.byteOffset, inflated.byteLength), 0)
}

function readElement(view: DataView, at: number): Element {
  const word = view.getUint32(at, true)
  const smallBytes = word >>> 16
  if (smallBytes > 0) {
    const data = new DataView(view.buffer, view.byteOffset + at + 4, smallBytes)
    return { type: word & 0xffff, data, next: at + 8 }
  }
  const length = view.getUint32(at + 4, true)
  const data = new DataView(view.buffer, view.byteOffset + at + 8, length)
  return { type: word, data, next: at + 8 + Math.ceil(length / 8) * 8 }
}

function readMatrix(element: Element): MatArray | null {
  if (element.type !== MI_MATRIX) return null
  const flags = readElement(element.data, 0)
  const dimensions = readElement(element.data, flags.next)
  const name = readElement(element.data, dimensions.next)
  const real = readElement(element.data, name.next)
  const arrayClass = flags.data.getUint8(0)
  const isNumeric = arrayClass >= 6 && arrayClass <= 13
  if (!isNumeric || dimensions.data.byteLength !== 8) return null
  const rows = dimensions.data.getInt32(0, true)
  const columns = dimensions.data.getInt32(4, true)
  const values = readNumbers(real)
  if (values === null || values.length !== rows * columns) return null
  const text = new Uint8Array(name.data.buffer, name.data.byteOffset, name.data.byteLength)
  return { name: String.fromCharCode(...text), rows, columns, values }
}

/** A double array may be stored in any smaller type that holds its values. */
function readNumbers({ type, data }: Element): Float64Array | null {
  const read = READERS[type]
  if (read === undefined) return null
  const [size, get] = read
  return Float64Array.from({ length: data.byteLength / size }, (_, i) => get(data, i * size))
}

const READERS: Record<number, [size: number, get: (view: DataView, at: number) => number]> = {
  1: [1, (view, at) => view.getInt8(at)],
  2: [1, (view, at) => view.getUint8(at)],
  3: [2, (view, at) => view.getInt16(at, true)],
  4: [2, (view, at) => view.getUint16(at, true)],
  5: [4, (view, at) => view.getInt32(at, true)],
  6: [4, (view, at) => view.getUint32(at, true)],
  7: [4, (view, at) => view.getFloat32(at, true)],
  9: [8, (view, at) => view.getFloat64(at, true)],
}
