import type { FlashRule } from '../../light/safety'

const flashes = (kind: string, count: number) => `${count} ${kind}${count === 1 ? '' : 'es'}`

const COUNTED: Record<FlashRule, (count: number) => string> = {
  'general-flash': (count) => flashes('flash', count),
  'red-flash': (count) => flashes('red flash', count),
  'bare-led': (count) => `${flashes('flash', count)} of the bare LED`,
}

/** What was counted of flashes and flicker, against which limit, and where the limit is from. */
export const LIGHT_SAFETY = {
  sources: {
    'general-flash':
      'WCAG 2.2, success criterion 2.3.1: a tenth of full luminance, the darker below 0.80',
    'red-flash': 'WCAG 2.2, success criterion 2.3.1: into or out of saturated red, in linear light',
    'bare-led':
      'WCAG 2.2, success criterion 2.3.2 (any size), counted more strictly: a bare LED is brighter than a screen',
  } satisfies Record<FlashRule, string>,
  counted: ({
    answer,
    rule,
    count,
    most,
  }: {
    answer: string
    rule: FlashRule
    count: number
    most: number
  }) => `"${answer}": ${COUNTED[rule](count)} in a second, ${most} are the limit.`,
  fromTheStart: 'played from the start, with all that follows',
  inTurn: (other: string) => `in turn with "${other}", as fast as they are taken`,
  everyBrightness: 'at every brightness below full',
  flickerSource: 'IEEE Std 1789-2015, 8.1.1; it speaks of lighting, so take it as guidance',
  /** @param noEffectHz from where on nothing is observed, where this drive lies below; else null */
  flickerPasses: (pwmHz: number, noEffectHz: number | null) =>
    `PWM at ${pwmHz} Hz: 100 % modulation is ${noEffectHz === null ? 'no observable effect' : `low risk; from ${noEffectHz} Hz on no observable effect`}.`,
  flickerFails: ({
    pwmHz,
    lowRiskPercent,
    lowRiskHz,
  }: {
    pwmHz: number
    lowRiskPercent: number
    lowRiskHz: number
  }) =>
    `PWM at ${pwmHz} Hz: 100 % modulation, ${lowRiskPercent.toFixed(1)} % are low risk; from ${lowRiskHz} Hz on 100 % are.`,
  screenCaveat:
    'A screen cannot show an LED’s colours: they are purer and far brighter. Hues here follow typical emitters from memory; judge them on the real LED.',
}
