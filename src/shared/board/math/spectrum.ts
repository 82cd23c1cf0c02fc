/** In-place radix-2 transform (Cooley and Tukey, Math. Comp. 19, 1965); length a power of two. */
export function fft(re: Float64Array, im: Float64Array): void {
  const n = re.length
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1
    for (; j & bit; bit >>= 1) j ^= bit
    j ^= bit
    if (i < j) {
      const [r, m] = [re[i]!, im[i]!]
      re[i] = re[j]!
      im[i] = im[j]!
      re[j] = r
      im[j] = m
    }
  }
  for (let length = 2; length <= n; length <<= 1) {
    for (let k = 0; k < length / 2; k++) {
      const [c, s] = [Math.cos((-2 * Math.PI * k) / length), Math.sin((-2 * Math.PI * k) / length)]
      for (let start = 0; start < n; start += length) {
        const a = start + k
        const b = a + length / 2
        const tr = re[b]! * c - im[b]! * s
        const ti = re[b]! * s + im[b]! * c
        re[b] = re[a]! - tr
        im[b] = im[a]! - ti
        re[a]! += tr
        im[a]! += ti
      }
    }
  }
}

export interface Spectrum {
  /** Power of bins 0..n/2, in units of variance: white noise of variance 1 has mean 1 in each. */
  power: Float64Array
  /** Width of a bin, Hz. */
  binHz: number
  /** Samples used. */
  count: number
}

/**
 * Periodogram with a Hann window of the longest stretch that is a power of two, straight line taken
 * out. A sine of amplitude A shows as A² count / 6 in its bin.
 */
export function spectrumOf(values: ArrayLike<number>, rateHz: number): Spectrum {
  const count = 2 ** Math.floor(Math.log2(Math.max(2, values.length)))
  const { level, slope } = lineThrough(values, count)
  const re = new Float64Array(count)
  const im = new Float64Array(count)
  for (let i = 0; i < count; i++) {
    const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / count)
    re[i] = window * (values[i]! - level - slope * i)
  }
  fft(re, im)
  // The window's squares sum to 3/8 of the count.
  const power = Float64Array.from(
    { length: count / 2 + 1 },
    (_, k) => (re[k]! ** 2 + im[k]! ** 2) / (0.375 * count),
  )
  return { power, binHz: rateHz / count, count }
}

function lineThrough(values: ArrayLike<number>, count: number): { level: number; slope: number } {
  const centre = (count - 1) / 2
  let sum = 0
  let moment = 0
  let spread = 0
  for (let i = 0; i < count; i++) {
    sum += values[i]!
    moment += (i - centre) * values[i]!
    spread += (i - centre) ** 2
  }
  const slope = moment / spread
  return { level: sum / count - slope * centre, slope }
}
