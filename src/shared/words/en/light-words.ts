import type { LightSettings } from '../../model/light'
import { headroomProblem } from '../../power/headroom'

/** Distinct brightnesses that the timer gives out of 256 levels, as a sentence. */
export function levelsSentence(bits: number, compare: readonly number[]): string {
  const distinct = new Set(compare).size
  const dark = compare.filter((value) => value === 0).length - 1
  const dimmest = dark === 1 ? 'the dimmest is' : `the ${dark} dimmest are`
  const lost = dark > 0 ? `, and ${dimmest} dark` : ''
  return `${bits} bits give ${distinct} of 256 brightness levels${lost}.`
}

/** A colour that fades out before the others as the cells drain; null when none does. */
export function drainSentence({ led, power }: LightSettings): string | null {
  const names = ['red', 'green', 'blue'] as const
  const out = led.emitters.flatMap((emitter, i) => {
    const problem = headroomProblem(power, led, emitter)
    return problem === null ? [] : [{ name: names[i]!, ...problem }]
  })
  const first = [...out].sort((a, b) => b.needsV - a.needsV)[0]
  if (first === undefined) return null
  const list = out.map(({ name }) => name).join(' and ')
  return `${list[0]!.toUpperCase()}${list.slice(1)} ${out.length === 1 ? 'needs' : 'need'} up to ${first.needsV.toFixed(1)} V and the supply falls to ${first.hasV.toFixed(1)} V: mixed colours drift towards ${out.length === 3 ? 'dark' : 'what is left'} as the cells drain.`
}
