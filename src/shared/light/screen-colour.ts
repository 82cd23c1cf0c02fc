import { encodedOf, type LinearRgb } from './luminance'

interface EmitterLight {
  /** CIE 1931 chromaticity. */
  x: number
  y: number
  /** Luminous intensity relative to the others at the same current. */
  intensity: number
}

/**
 * Three emitters of common RGB LEDs (about 625, 525 and 465 nm): chromaticities and intensities are
 * from memory of data sheets and differ from maker to maker.
 */
const EMITTERS: readonly [EmitterLight, EmitterLight, EmitterLight] = [
  { x: 0.7, y: 0.299, intensity: 0.45 },
  { x: 0.17, y: 0.72, intensity: 1 },
  { x: 0.135, y: 0.06, intensity: 0.2 },
]

/** Linear light of sRGB's primaries from CIE XYZ (IEC 61966-2-1). */
const FROM_XYZ = [
  [3.2404542, -1.5371385, -0.4985314],
  [-0.969266, 1.8760108, 0.041556],
  [0.0556434, -0.2040259, 1.0572252],
] as const

function xyzOf(duty: LinearRgb): [number, number, number] {
  const sum: [number, number, number] = [0, 0, 0]
  EMITTERS.forEach(({ x, y, intensity }, channel) => {
    const light = intensity * (duty[channel] ?? 0)
    sum[0] += (light * x) / y
    sum[1] += light
    sum[2] += (light * (1 - x - y)) / y
  })
  return sum
}

/** Linear sRGB of a mix, brought into the screen's range by adding white. */
function inGamut(duty: LinearRgb): number[] {
  const xyz = xyzOf(duty)
  const linear = FROM_XYZ.map((row) => row.reduce((sum, a, i) => sum + a * (xyz[i] ?? 0), 0))
  const below = Math.min(0, ...linear)
  return linear.map((value) => value - below)
}

/** A single emitter at full is as bright as the screen shows; more than one is clipped in scale. */
const BRIGHTEST = Math.max(...inGamut([1, 0, 0]), ...inGamut([0, 1, 0]), ...inGamut([0, 0, 1]))

/**
 * The mix of three emitters as a colour of this screen, sRGB 0 to 255.
 * @param duty of red, green, blue, 0 to 1
 */
export function screenColour(duty: LinearRgb): [number, number, number] {
  const linear = inGamut(duty).map((value) => value / BRIGHTEST)
  const over = Math.max(1, ...linear)
  return linear.map((value) => Math.round(255 * encodedOf(value / over))) as [
    number,
    number,
    number,
  ]
}

/** The same as a CSS colour. */
export function screenCss(duty: LinearRgb): string {
  return `rgb(${screenColour(duty).join(' ')})`
}
