/**
 * Seeded random numbers: xoshiro128** 1.1 (Blackman and Vigna, public domain; ACM TOMS 47(4),
 * 2021) with 32-bit integers only, so a seed gives the same numbers everywhere. Not for secrets.
 */
export interface Random {
  /** Integer in [0, 2³²). */
  nextUint32(): number
  /** In [0, 1), 32 random bits. */
  next(): number
  /** In [low, high). */
  uniform(low: number, high: number): number
  /** Integer in [0, count). */
  integer(count: number): number
  /** Normally distributed with mean 0 and standard deviation 1. */
  normal(): number
  /** A stream of its own, so that draws in one place do not shift those in another. */
  fork(): Random
}

function rotateLeft(value: number, bits: number): number {
  return (value << bits) | (value >>> (32 - bits))
}

/** The generator from its four state words, not all zero. */
export function randomFromState(state: readonly [number, number, number, number]): Random {
  let [a, b, c, d] = state
  const nextUint32 = () => {
    const result = Math.imul(rotateLeft(Math.imul(b, 5), 7), 9) >>> 0
    const t = b << 9
    c ^= a
    d ^= b
    b ^= c
    a ^= d
    c ^= t
    d = rotateLeft(d, 11)
    return result
  }
  const next = () => nextUint32() / 4294967296
  return {
    nextUint32,
    next,
    uniform: (low, high) => low + (high - low) * next(),
    integer: (count) => Math.floor(next() * count),
    // Box and Muller 1958; 1 - next() keeps the logarithm finite.
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    fork: () => createRandom(nextUint32()),
  }
}

/** @param seed any integer; its low 32 bits count. */
export function createRandom(seed: number): Random {
  let state = seed | 0
  // Mixes the seed so that neighbours differ at once (finaliser of MurmurHash3 on a Weyl sequence).
  const word = () => {
    state = (state + 0x9e3779b9) | 0
    let z = state
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b)
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35)
    return (z ^ (z >>> 16)) >>> 0
  }
  return randomFromState([word(), word(), word(), word()])
}
