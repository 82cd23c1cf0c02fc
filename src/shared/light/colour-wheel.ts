import type { Emission } from '../model/light'

/** Amber, as paper lanterns glow; the other gestures follow round the wheel. */
const FIRST_HUE = 1 / 9

/**
 * A hue whose three channels add up to at most 255, so that a light never draws more than one
 * channel at full.
 * @param turn 0 is red, 1/3 green, 2/3 blue; any whole turns are taken off
 */
export function hueEmission(turn: number): Emission {
  const hue = turn - Math.floor(turn)
  const channel = (centre: number) => {
    const away = Math.abs(hue - centre)
    return Math.max(0, 1 - 3 * Math.min(away, 1 - away))
  }
  return [0, 1 / 3, 2 / 3].map((centre) => Math.floor(255 * channel(centre) + 1e-9)) as Emission
}

/** Colour of a gesture that was given none: hues spread evenly over the wheel. */
export function gestureColour(gesture: number, count: number): Emission {
  return hueEmission(FIRST_HUE + gesture / count)
}

/** Hue of a colour in turns, 0 to 1, and its saturation: 0 with all channels alike, 1 with one dark. */
export function hueOf([red, green, blue]: Emission): { turn: number; saturation: number } {
  const most = Math.max(red, green, blue)
  const least = Math.min(red, green, blue)
  const sum = red + green + blue - 3 * least
  if (most === 0 || sum === 0) return { turn: 0, saturation: 0 }
  const [r, g, b] = [red - least, green - least, blue - least]
  // On each third of the wheel one channel falls while the next rises, their sum staying the same.
  const thirds = b === 0 ? g / sum : r === 0 ? 1 + b / sum : 2 + r / sum
  return { turn: thirds / 3, saturation: (most - least) / most }
}

/** The colour of a hue with white mixed in; channels add up to at most 255 as in `hueEmission`. */
export function tinted(turn: number, saturation: number): Emission {
  const pure = hueEmission(turn)
  const white = 255 / 3
  return pure.map((value) =>
    Math.floor(value * saturation + white * (1 - saturation) + 1e-9),
  ) as Emission
}
