const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'
const VALUES = new Map([...ALPHABET].map((character, value) => [character, value]))

/** Base 64 for addresses and file names, without padding (RFC 4648, section 5). */
export function toBase64url(bytes: Uint8Array): string {
  let text = ''
  for (let at = 0; at < bytes.length; at += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(at, at + 3)
    const word = (a << 16) | (b << 8) | c
    const characters = Math.min(4, bytes.length - at + 1)
    for (let i = 0; i < characters; i++) text += ALPHABET[(word >> (18 - 6 * i)) & 63]
  }
  return text
}

/** The bytes, or null when a character is foreign. Bits that make no whole byte are dropped. */
export function fromBase64url(text: string): Uint8Array | null {
  const bytes = new Uint8Array(Math.floor((text.length * 6) / 8))
  let bits = 0
  let held = 0
  let at = 0
  for (const character of text) {
    const value = VALUES.get(character)
    if (value === undefined) return null
    bits = ((bits << 6) | value) & 0xffff
    held += 6
    if (held < 8) continue
    held -= 8
    bytes[at++] = (bits >> held) & 0xff
  }
  return bytes
}
