/** Memory of the core's module. */
export interface ModuleMemory {
  memory: { readonly buffer: ArrayBuffer; grow(pages: number): number }
  __heap_base: { value: number }
}

/** What the core's module exports; see `src/core/port/wasm.c`. Pointers are byte offsets. */
export interface CoreExports extends ModuleMemory {
  model_version(): number
  read_model(bytes: number, length: number, sizes: number): number
  init(ring: number, query: number, row: number, board: number, sizes: number): number
  reset(): void
  button(pressed: number): number
  push(
    samples: number,
    count: number,
    eventCame: number,
    eventOut: number,
    energy: number,
    phase: number,
  ): number
  classify(samples: number, count: number, gravity: number, eventOut: number): number
  normalise(samples: number, facts: number, count: number, queries: number): number
  cut(
    energy: number,
    counts: number,
    lengths: number,
    streams: number,
    segmenter: number,
    phases: number,
    out: number,
  ): number
  query(): number
  template_distance(index: number): number
  dtw(
    a: number,
    aLength: number,
    b: number,
    bLength: number,
    channels: number,
    band: number,
    cost: number,
    limit: number,
    row: number,
  ): number
  kernel_counts(
    queries: number,
    count: number,
    records: number,
    featureCount: number,
    out: number,
  ): void
  kernel_outputs(queries: number, count: number, record: number, out: number): void
  push_all(
    samples: number,
    count: number,
    room: number,
    came: number,
    events: number,
    queries: number,
    energy: number,
    phase: number,
  ): number
  pack_values(count: number, size: number): number
  pack(series: number, count: number, size: number, packed: number): void
  dtw_row(
    a: number,
    series: number,
    packed: number,
    first: number,
    count: number,
    length: number,
    channels: number,
    band: number,
    cost: number,
    out: number,
    row: number,
  ): void
  kernel_counts_packed(
    packed: number,
    count: number,
    length: number,
    channels: number,
    records: number,
    featureCount: number,
    out: number,
  ): number
  gram(z: number, rows: number, columns: number, gram: number, packed: number): void
  product(
    a: number,
    rows: number,
    terms: number,
    b: number,
    columns: number,
    out: number,
    packed: number,
  ): void
  leave_out(
    matrix: number,
    n: number,
    add: number,
    strength: number,
    targets: number,
    columns: number,
    sizes: number,
    groups: number,
    most: number,
    dual: number,
    residuals: number,
    scratch: number,
  ): number
  teach_open(
    slots: number,
    slotCount: number,
    templates: number,
    segments: number,
    takes: number,
  ): number
  teach_begin(gesture: number): number
  teach_cancel(): void
  teach_forget(gesture: number): number
  teach_event(eventOut: number, factsOut: number): number
}

const PAGE_BYTES = 65536

/**
 * Hands out the module's linear memory behind its own data: from `base` up, with a mark to go back
 * to. Views are made anew at each use, since growing memory detaches the old ones.
 */
export class WasmMemory {
  private next: number
  private readonly exports: ModuleMemory

  constructor(exports: ModuleMemory) {
    this.exports = exports
    this.next = align(exports.__heap_base.value)
  }

  /** Offset of `bytes` fresh bytes, aligned to eight. */
  take(bytes: number): number {
    const at = this.next
    this.next = align(at + bytes)
    const missing = this.next - this.exports.memory.buffer.byteLength
    if (missing > 0) this.exports.memory.grow(Math.ceil(missing / PAGE_BYTES))
    return at
  }

  mark(): number {
    return this.next
  }

  /** Gives back everything taken since the mark. */
  release(mark: number): void {
    this.next = mark
  }

  putBytes(bytes: Uint8Array): number {
    const at = this.take(bytes.length)
    this.uint8(at, bytes.length).set(bytes)
    return at
  }

  putInt8(values: Int8Array): number {
    const at = this.take(values.length)
    this.int8(at, values.length).set(values)
    return at
  }

  putInt16(values: Int16Array): number {
    const at = this.take(values.length * 2)
    this.int16(at, values.length).set(values)
    return at
  }

  /** Bytes are made numbers of that size on the way. */
  putFloat64(values: Float64Array | Uint8Array): number {
    const at = this.take(values.length * 8)
    this.float64(at, values.length).set(values)
    return at
  }

  /** Series of `size` values behind each other. */
  putAll(series: readonly Int8Array[], size: number): number {
    const at = this.take(series.length * size)
    const view = this.int8(at, series.length * size)
    series.forEach((one, i) => {
      if (one.length !== size) throw new RangeError('the core needs series of one length')
      view.set(one, i * size)
    })
    return at
  }

  int8(at: number, length: number): Int8Array {
    return new Int8Array(this.exports.memory.buffer, at, length)
  }

  uint8(at: number, length: number): Uint8Array {
    return new Uint8Array(this.exports.memory.buffer, at, length)
  }

  int16(at: number, length: number): Int16Array {
    return new Int16Array(this.exports.memory.buffer, at, length)
  }

  uint32(at: number, length: number): Uint32Array {
    return new Uint32Array(this.exports.memory.buffer, at, length)
  }

  float32(at: number, length: number): Float32Array {
    return new Float32Array(this.exports.memory.buffer, at, length)
  }

  float64(at: number, length: number): Float64Array {
    return new Float64Array(this.exports.memory.buffer, at, length)
  }
}

function align(offset: number): number {
  return (offset + 7) & ~7
}
