/*
 * Base45 (RFC 9285): bytes in the 45 characters of a QR code's alphanumeric mode, which holds them in
 * 5.5 bits a character. Two bytes take 16.5 bits; a reader that knows text only gives them back whole.
 */
const ALPHABET = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:'
const BASE = 45
const VALUES = new Map([...ALPHABET].map((character, value) => [character, value]))

export function toBase45(bytes: Uint8Array): string {
  const parts: string[] = []
  for (let at = 0; at < bytes.length; at += 2) {
    const isPair = at + 1 < bytes.length
    let value = isPair ? 256 * bytes[at]! + bytes[at + 1]! : bytes[at]!
    for (let left = isPair ? 3 : 2; left > 0; left--) {
      parts.push(ALPHABET[value % BASE]!)
      value = Math.floor(value / BASE)
    }
  }
  return parts.join('')
}

/** Null for text that no bytes encode to. */
export function fromBase45(text: string): Uint8Array | null {
  const rest = text.length % 3
  if (rest === 1) return null
  const bytes = new Uint8Array(2 * Math.floor(text.length / 3) + (rest === 2 ? 1 : 0))
  for (let at = 0, to = 0; at < text.length; at += 3) {
    const digits = [...text.slice(at, at + 3)].map((character) => VALUES.get(character))
    let value = 0
    for (const digit of digits.reverse()) {
      if (digit === undefined) return null
      value = value * BASE + digit
    }
    const isPair = digits.length === 3
    if (value > (isPair ? 0xffff : 0xff)) return null
    if (isPair) bytes[to++] = value >> 8
    bytes[to++] = value & 0xff
  }
  return bytes
}
