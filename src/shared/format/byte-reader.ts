/** Reads little-endian unsigned integers one after the other. */
export class ByteReader {
  at: number
  private readonly view: DataView

  constructor(bytes: Uint8Array, at: number) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
    this.at = at
  }

  u8(): number {
    this.at += 1
    return this.view.getUint8(this.at - 1)
  }

  u16(): number {
    this.at += 2
    return this.view.getUint16(this.at - 2, true)
  }

  u32(): number {
    this.at += 4
    return this.view.getUint32(this.at - 4, true)
  }
}
