import { beforeAll, expect, test } from 'vitest'
import { loadLightForNode } from '../../../src/build/load-core'
import { airTrail } from '../../../src/shared/light/air'
import { hueEmission, hueOf, tinted } from '../../../src/shared/light/colour-wheel'
import { defaultLight } from '../../../src/shared/light/defaults'
import { lightTable } from '../../../src/shared/light/library-light'
import { levelOf, lightnessOf } from '../../../src/shared/light/lightness'
import type { LightPlayer } from '../../../src/shared/light/player'
import { runAlone } from '../../../src/shared/light/run'
import { screenColour } from '../../../src/shared/light/screen-colour'
import { brightest, stripGradient } from '../../../src/shared/light/strip'
import { lightUse } from '../../../src/shared/light/use'
import { drainSentence, levelsSentence } from '../../../src/shared/words/en/light-words'
import { lit } from './examples'

let player: LightPlayer
beforeAll(async () => {
  player = await loadLightForNode()
})

test('emitters stay their hue on the screen, within its range, and dark is black', () => {
  expect(screenColour([0, 0, 0])).toEqual([0, 0, 0])
  const [red, green, blue] = [
    screenColour([1, 0, 0]),
    screenColour([0, 1, 0]),
    screenColour([0, 0, 1]),
  ]
  expect(red[0]).toBeGreaterThan(2 * Math.max(red[1], red[2]))
  expect(green[1]).toBeGreaterThan(1.5 * Math.max(green[0], green[2]))
  expect(blue[2]).toBeGreaterThan(2 * Math.max(blue[0], blue[1]))
  for (const duty of [
    [1, 1, 1],
    [1, 1, 0],
    [0.001, 0, 1],
  ] as const) {
    for (const value of screenColour(duty)) {
      expect(value).toBeGreaterThanOrEqual(0)
      expect(value).toBeLessThanOrEqual(255)
    }
  }
})

test('more duty is never darker on the screen', () => {
  let before = 0
  for (let duty = 0; duty <= 1; duty += 0.01) {
    const sum = screenColour([duty, duty / 2, 0]).reduce((all, value) => all + value, 0)
    expect(sum).toBeGreaterThanOrEqual(before)
    before = sum
  }
})

test('hue and saturation of a colour are those it was made from', () => {
  for (const turn of [0, 0.1, 1 / 3, 0.5, 0.7, 0.95]) {
    for (const saturation of [1, 0.6, 0.3]) {
      const found = hueOf(tinted(turn, saturation))
      expect(found.turn).toBeCloseTo(turn, 1)
    }
    expect(hueOf(hueEmission(turn)).saturation).toBe(1)
  }
  expect(hueOf([85, 85, 85])).toEqual({ turn: 0, saturation: 0 })
})

test('a strip shows the run from left to right', () => {
  const library = lit([{ kind: 'steady', colour: [255, 0, 0], fadeMs: 1000, periodMs: 2000 }])
  const run = runAlone(player, lightTable(library), 3, 2000)
  expect(stripGradient(run, 4).match(/rgb\(/g)).toHaveLength(4)
  expect(stripGradient(run, 4)).toMatch(/rgb\(\d+ 0 \d+\) 0\.00% 25\.00%/)
  expect(brightest(run)).toEqual([1, 0, 0])
  expect(stripGradient([])).toBe('none')
})

test('the light that a library gives is counted in full-on seconds of each emitter', () => {
  const library = lit([
    { kind: 'steady', colour: [255, 0, 0], periodMs: 2000 },
    { kind: 'steady', colour: [0, 255, 0], periodMs: 1000 },
  ])
  library.light.answers.idle.light = { ...library.light.answers.idle.light, fadeMs: 0 }
  const use = lightUse(player, library)
  expect(use.restDuty).toEqual([0, 0, 0])
  expect(use.answerSeconds[0]).toBeCloseTo(1, 1)
  expect(use.answerSeconds[1]).toBeCloseTo(0.5, 1)
  expect(use.answerSeconds[2]).toBe(0)
})

test('a turning prop draws a trail with the light of each moment, at its own speed', () => {
  // Flat, turning about z by 180 deg/s for a second, at rest before and after.
  const count = 180
  const block = { tMs: new Float64Array(count), values: new Float32Array(count * 6) }
  for (let i = 0; i < count; i++) {
    block.tMs[i] = (i * 1000) / 60
    block.values[i * 6 + 2] = 9.80665
    block.values[i * 6 + 5] = i >= 60 && i < 120 ? 180 : 0
  }
  const run = Array.from({ length: 400 }, (_, i) => [i / 400, 0, 0] as const)
  const trail = airTrail(block, [0, 1, 0], 1, run)
  // The tip is 0.3 m from the fist: pi rad/s draw 0.94 m/s.
  expect(trail?.peakMps).toBeGreaterThan(0.7)
  expect(trail?.peakMps).toBeLessThan(1.3)
  const reds = trail?.points.map(({ colour }) => colour[0]) ?? []
  expect(reds[0]).toBe(0)
  expect(reds.at(-1)).toBeGreaterThan(0.4)
})

test('words give numbers: lightness, levels of the timer, the colour that goes first', () => {
  expect([0, 127.5, 204, 255].map(lightnessOf)).toEqual([0, 50, 80, 100])
  expect(lightnessOf(levelOf(37))).toBe(37)
  const compare = Array.from({ length: 256 }, (_, i) => player.pwm(player.luminance(i), 8))
  expect(levelsSentence(8, compare)).toBe(
    '8 bits give 174 of 256 brightness levels, and the 4 dimmest are dark.',
  )
  const settings = defaultLight()
  expect(drainSentence(settings)).toContain('Green and blue need up to 3.8 V')
  settings.power = { ...settings.power, supply: 'boost', boostV: 5 }
  expect(drainSentence(settings)).toBeNull()
})
