// FIPS 180-4, "Secure Hash Standard", section 6.2. Written out because pure code has no platform
// crypto and the model's hash must not need an asynchronous call.

const PRIMES = firstPrimes(64)
const ROUND = Uint32Array.from(PRIMES, (p) => fractionBits(Math.cbrt(p)))
const START = Uint32Array.from(PRIMES.slice(0, 8), (p) => fractionBits(Math.sqrt(p)))

/** SHA-256 of the bytes in lower-case hex. */
export function sha256Hex(bytes: Uint8Array): string {
  const state = START.slice()
  const padded = pad(bytes)
  const words = new Uint32Array(64)
  for (let at = 0; at < padded.byteLength; at += 64) compress(state, padded, at, words)
  return [...state].map((word) => word.toString(16).padStart(8, '0')).join('')
}

function pad(bytes: Uint8Array): DataView {
  const length = (Math.floor((bytes.length + 8) / 64) + 1) * 64
  const padded = new Uint8Array(length)
  padded.set(bytes)
  padded[bytes.length] = 0x80
  const view = new DataView(padded.buffer)
  view.setUint32(length - 8, Math.floor(bytes.length / 2 ** 29))
  view.setUint32(length - 4, (bytes.length << 3) >>> 0)
  return view
}

function compress(state: Uint32Array, block: DataView, at: number, w: Uint32Array): void {
  for (let t = 0; t < 16; t++) w[t] = block.getUint32(at + 4 * t)
  for (let t = 16; t < 64; t++) {
    const a = w[t - 15]!
    const b = w[t - 2]!
    const s0 = rotate(a, 7) ^ rotate(a, 18) ^ (a >>> 3)
    const s1 = rotate(b, 17) ^ rotate(b, 19) ^ (b >>> 10)
    w[t] = w[t - 16]! + s0 + w[t - 7]! + s1
  }
  // Eight variables and not an array: sessions of a fair are hashed while somebody waits.
  let [a, b, c, d] = [state[0]! | 0, state[1]! | 0, state[2]! | 0, state[3]! | 0]
  let [e, f, g, h] = [state[4]! | 0, state[5]! | 0, state[6]! | 0, state[7]! | 0]
  for (let t = 0; t < 64; t++) {
    const sum1 = rotate(e, 6) ^ rotate(e, 11) ^ rotate(e, 25)
    const t1 = (h + sum1 + ((e & f) ^ (~e & g)) + ROUND[t]! + w[t]!) | 0
    const sum0 = rotate(a, 2) ^ rotate(a, 13) ^ rotate(a, 22)
    const t2 = (sum0 + ((a & b) ^ (a & c) ^ (b & c))) | 0
    h = g
    g = f
    f = e
    e = (d + t1) | 0
    d = c
    c = b
    b = a
    a = (t1 + t2) | 0
  }
  for (const [i, word] of [a, b, c, d, e, f, g, h].entries()) state[i] = state[i]! + word
}

function rotate(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits))
}

function fractionBits(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32)
}

function firstPrimes(count: number): number[] {
  const primes: number[] = []
  for (let n = 2; primes.length < count; n++) {
    if (primes.every((p) => n % p !== 0)) primes.push(n)
  }
  return primes
}
