import type { RecogniserModel } from '../model/recogniser-model'
import { commentText } from './c-text'

/** Amber, as paper lanterns glow; the other gestures follow round the wheel. */
const FIRST_HUE = 1 / 9

/**
 * Colour of a gesture: hues spread evenly over the wheel, the three channels adding up to at most
 * 255, so that a light never draws more than one channel at full.
 * @returns duty of red, green, blue, 0 to 255
 */
export function gestureColour(gesture: number, count: number): [number, number, number] {
  const hue = (FIRST_HUE + gesture / count) % 1
  const channel = (centre: number) => {
    const away = Math.abs(hue - centre)
    return Math.max(0, 1 - 3 * Math.min(away, 1 - away))
  }
  return [0, 1 / 3, 2 / 3].map((centre) => Math.floor(255 * channel(centre) + 1e-9)) as [
    number,
    number,
    number,
  ]
}

/** `effect_table.c`: one colour a gesture, in the order of `enum model_gesture`. */
export function effectTable(model: RecogniserModel): string {
  const rows = model.gestures.map(({ name }, index) => {
    const [red, green, blue] = gestureColour(index, model.gestures.length)
    return `    {${red}, ${green}, ${blue}}, /* ${commentText(name)} */`
  })
  return `/*
 * Colours of the gestures, in the order of enum model_gesture: hues spread evenly. Red, green and
 * blue of a row add up to at most 255, so the LED draws no more than one channel at full. Change
 * them as you like, within what your LED and cells stand.
 */
#include "effects.h"

const light_colour light_colours[] = {
${rows.join('\n')}
};
`
}
