import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { repositoryPath } from '../../src/build/paths'
import { shadePercent } from '../../src/ui/charts/confusion-matrix'

const css = readFileSync(repositoryPath('src/ui/theme/tokens.css'), 'utf8')
const contrastCss = readFileSync(repositoryPath('src/ui/theme/contrast.css'), 'utf8')

/** Colours of the first rule with this selector; what it leaves out stays as at night. */
function coloursOf(selector: string, sheet = css): Record<string, string> {
  const from = sheet.indexOf(`${selector} {`)
  if (from < 0) throw new Error(`The style sheet has no rule ${selector}.`)
  const rule = sheet.slice(from, sheet.indexOf('}', from))
  return Object.fromEntries(
    [...rule.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name, colour]) => [name, colour]),
  )
}

/** Relative luminance and contrast ratio as WCAG 2.2 defines them. */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(one: string, other: string): number {
  const [low = 0, high = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b)
  return (high + 0.05) / (low + 0.05)
}

const night = coloursOf(':root')
const day = { ...night, ...coloursOf(':root[data-theme="day"]') }
const asPhone = { ...night, ...coloursOf(':root:not([data-theme="night"])') }

const more = {
  night: { ...night, ...coloursOf(':root', contrastCss) },
  day: { ...day, ...coloursOf(':root[data-theme="day"]', contrastCss) },
  asPhone: { ...asPhone, ...coloursOf(':root:not([data-theme="night"])', contrastCss) },
}

test('white on black is 21 to 1 and #777 on white 4.48 (WebAIM contrast checker)', () => {
  expect(contrast('#ffffff', '#000000')).toBeCloseTo(21, 9)
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2)
})

test('day is the same whether it was chosen or comes from the phone', () => {
  expect(asPhone).toEqual(day)
  expect(more.asPhone).toEqual(more.day)
})

describe.each([
  ['night', night],
  ['day', day],
])('at %s', (_name, colours) => {
  const ratio = (one: string, other: string) => contrast(colours[one] ?? '', colours[other] ?? '')

  test.each(['text', 'text-quiet', 'text-faint'])('%s reads on every ground: 4.5 to 1', (ink) => {
    for (const ground of ['ground', 'raised', 'sunk']) {
      expect(ratio(ink, ground), `${ink} on ${ground}`).toBeGreaterThanOrEqual(4.5)
    }
  })

  test('the words of the amber action read, also while it is pressed', () => {
    expect(ratio('on-amber', 'amber')).toBeGreaterThanOrEqual(4.5)
    expect(ratio('on-amber', 'amber-pressed')).toBeGreaterThanOrEqual(4.5)
  })

  test('edges of what can be tapped are seen: 3 to 1 (WCAG 2.2, 1.4.11)', () => {
    expect(ratio('line-strong', 'ground')).toBeGreaterThanOrEqual(3)
    expect(ratio('line-strong', 'raised')).toBeGreaterThanOrEqual(3)
  })
})

describe.each([
  ['night', more.night],
  ['day', more.day],
])('at %s with more contrast asked for', (_name, colours) => {
  const ratio = (one: string, other: string) => contrast(colours[one] ?? '', colours[other] ?? '')

  test.each(['text', 'text-quiet', 'text-faint'])('%s reads at 7 to 1 (WCAG 2.2, 1.4.6)', (ink) => {
    for (const ground of ['ground', 'raised', 'sunk']) {
      expect(ratio(ink, ground), `${ink} on ${ground}`).toBeGreaterThanOrEqual(7)
    }
  })

  test('the words of the amber action read at 7 to 1, also while it is pressed', () => {
    expect(ratio('on-amber', 'amber')).toBeGreaterThanOrEqual(7)
    expect(ratio('on-amber', 'amber-pressed')).toBeGreaterThanOrEqual(7)
  })

  test('every edge is seen at 4.5 to 1, also those that only part things', () => {
    for (const edge of ['line', 'line-strong']) {
      for (const ground of ['ground', 'raised', 'sunk']) {
        expect(ratio(edge, ground), `${edge} on ${ground}`).toBeGreaterThanOrEqual(4.5)
      }
    }
  })
})

/** As color-mix in srgb: so much of `one` in `other`, channel by channel. */
function mixed(one: string, percent: number, other: string): string {
  const channels = [1, 3, 5].map((at) => {
    const [a = 0, b = 0] = [one, other].map((colour) =>
      Number.parseInt(colour.slice(at, at + 2), 16),
    )
    return Math.round(b + ((a - b) * percent) / 100)
  })
  return `#${channels.map((value) => value.toString(16).padStart(2, '0')).join('')}`
}

test.each([
  ['night', night, 4.5],
  ['day', day, 4.5],
  ['night with more contrast', more.night, 7],
  ['day with more contrast', more.day, 7],
])('a count reads on every shade of the confusion matrix, %s', (_name, colours, least) => {
  const { text = '', ground = '' } = colours
  for (let count = 1; count <= 100; count++) {
    const shade = mixed(text, shadePercent(count / 100), ground)
    const ink = count > 50 ? ground : text
    expect(contrast(ink, shade), `${count} of 100`).toBeGreaterThanOrEqual(least)
  }
})
