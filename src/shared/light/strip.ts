import type { LinearRgb } from './luminance'
import type { Run } from './run'
import { screenCss } from './screen-colour'

/** A run as stops of a CSS gradient from left to right, one for each of `stops` equal parts. */
export function stripGradient(run: Run, stops = 96): string {
  if (run.length === 0) return 'none'
  const colours = Array.from({ length: stops }, (_, i) => {
    const at = Math.min(run.length - 1, Math.floor((i * run.length) / stops))
    const [from, to] = [(100 * i) / stops, (100 * (i + 1)) / stops]
    return `${screenCss(run[at]!)} ${from.toFixed(2)}% ${to.toFixed(2)}%`
  })
  return `linear-gradient(90deg, ${colours.join(', ')})`
}

/** The brightest moment of a run: the colour that stands for it. */
export function brightest(run: Run): LinearRgb {
  let most: LinearRgb = [0, 0, 0]
  let sum = 0
  for (const colour of run) {
    const light = colour[0] + colour[1] + colour[2]
    if (light > sum) {
      sum = light
      most = colour
    }
  }
  return most
}
