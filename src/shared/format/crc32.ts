/** CRC of each byte by itself, so that the sum goes a byte and not a bit at a time. */
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let crc = byte
  for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0)
  return crc
})

/** CRC-32 as in ZIP and PNG (polynomial 0xEDB88320 reflected). */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff
  for (let at = 0; at < bytes.length; at++) {
    crc = (crc >>> 8) ^ TABLE[(crc ^ bytes[at]!) & 0xff]!
  }
  return ~crc >>> 0
}
