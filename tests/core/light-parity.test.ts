import { afterAll, beforeAll, expect, it } from 'vitest'
import { loadLightForNode } from '../../src/build/load-core'
import { lightTable } from '../../src/shared/light/library-light'
import type { LightPlayer } from '../../src/shared/light/player'
import { EASES, LIGHT_KINDS, LIGHT_RULES, type LightEffect } from '../../src/shared/model/light'
import { createRandom, type Random } from '../../src/shared/statistics/random'
import { lit } from '../shared/light/examples'
import { describeWithTools } from '../support/tools'
import { LightBuild } from './light-build'

const KEYS: LightEffect['keys'] = (['step', 'linear', 'smooth', 'in', 'out'] as const).flatMap(
  (ease, i) => [
    { atMs: i * 130, level: 255 - i * 40, colour: [255, i * 50, 7], ease },
    { atMs: i * 130 + 70, level: i * 13, colour: [0, 255 - i, 99], ease },
  ],
)

/** Every kind, rule and way on, periods at both ends. */
const LIBRARY = lit(
  [
    { kind: 'steady', colour: [255, 3, 128], fadeMs: 600, periodMs: 2100 },
    { kind: 'breathe', low: 20, periodMs: 977, rounds: 3, next: 'g3', rule: 'after-round' },
    { kind: 'flicker', low: 100, high: 180, periodMs: 140, rounds: 40, rule: 'to-end' },
    { kind: 'sparkle', low: 10, periodMs: 701, rounds: 6, fadeMs: 333 },
    { kind: 'hue', hue: 200, turn: 255, periodMs: 65_535, rounds: 1, rule: 'after-round' },
    { kind: 'hue', hue: 30, turn: 90, periodMs: 20, rounds: 50, next: 'reject' },
    { kind: 'keys', keys: KEYS, periodMs: 590, rounds: 2, fadeMs: 65_535 },
    { kind: 'off' },
  ],
  { minChangeMs: 250 },
)
LIBRARY.light.answers.idle.light = { ...LIBRARY.light.answers.low.light, periodMs: 333 }
LIBRARY.light.led.limitMa = 12

type Act = { tick: number } | { start: number } | { low: number }

function acts(random: Random, count: number): Act[] {
  return Array.from({ length: count }, () => {
    const pick = random.integer(20)
    if (pick === 0) return { start: random.integer(12) }
    if (pick === 1) return { low: random.integer(2) }
    const size = [1, 5, 17, 20, 250, 4000][random.integer(6)]
    return { tick: random.integer(size) }
  })
}

const lineOf = (act: Act) => Object.entries(act).flat().join(' ')

function played(player: LightPlayer, list: Act[], effectCount: number): string[] {
  const lines = ['init 0']
  const taken = { started: 1, waits: 2, 'not-taken': 0 }
  for (const act of list) {
    if ('tick' in act) {
      const duty = player.ticks(act.tick, 1)
      lines.push(`${player.playing()} ${duty.join(' ')}`)
    } else if ('low' in act) {
      player.low(act.low === 1)
    } else if (act.start >= effectCount) {
      lines.push('start -1')
    } else {
      lines.push(`start ${taken[player.start(act.start)]}`)
    }
  }
  return lines
}

/** Any twenty effects that are sound. */
function anyLibrary(random: Random): ReturnType<typeof lit> {
  const byte = () => random.integer(256)
  const colour = (): LightEffect['colour'] => [byte(), byte(), byte()]
  const pick = <T>(...from: T[]): T => from[random.integer(from.length)]!
  const keysOf = (): LightEffect['keys'] => {
    let atMs = -10
    return Array.from({ length: 2 + random.integer(20) }, (_, i) => {
      atMs += 10 + (i === 0 ? 0 : random.integer(900))
      return { atMs, level: byte(), colour: colour(), ease: pick(...EASES) }
    })
  }
  const anyEffect = (): Partial<LightEffect> => {
    const kind = pick(...LIGHT_KINDS)
    const keys = kind === 'keys' ? keysOf() : []
    const low = byte()
    return {
      kind,
      keys,
      low,
      rule: pick(...LIGHT_RULES),
      next: pick(null, 'reject', 'g0', 'g5', 'g19'),
      high: low + random.integer(256 - low),
      colour: colour(),
      hue: byte(),
      turn: byte(),
      rounds: random.integer(6),
      periodMs: keys.at(-1)?.atMs ?? pick(20, 21, 65_535, 20 + random.integer(3000)),
      fadeMs: pick(0, 1, 65_535, random.integer(2000)),
    }
  }
  const library = lit(Array.from({ length: 20 }, anyEffect), {
    minChangeMs: pick(0, random.integer(1500)),
  })
  library.light.led.limitMa = pick(0, random.integer(40))
  return library
}

let player: LightPlayer
beforeAll(async () => {
  player = await loadLightForNode()
})

for (const compiler of ['gcc', 'clang'] as const)
  describeWithTools(`light built by ${compiler} under sanitizers`, [compiler], () => {
    let host: LightBuild
    beforeAll(() => {
      host = new LightBuild(compiler, LIBRARY)
    })
    afterAll(() => host?.dispose())

    it('plays the exported table to the bit as the preview does', () => {
      for (const seed of [1, 2, 3]) {
        const list = acts(createRandom(seed), 3000)
        player.load(lightTable(LIBRARY))
        expect(host.run(list.map(lineOf))).toEqual(played(player, list, 11))
      }
    })

    it('plays any sound table to the bit as the preview does', () => {
      for (const seed of [11, 12]) {
        const random = createRandom(seed)
        const library = anyLibrary(random)
        const list = acts(random, 3000)
        const build = new LightBuild(compiler, library)
        player.load(lightTable(library))
        expect(build.run(list.map(lineOf))).toEqual(played(player, list, 23))
        build.dispose()
      }
    })

    it('has its lightness and its timer values at every level', () => {
      const levels = Array.from({ length: 1021 }, (_, i) => `${player.luminance(i / 4)}`)
      expect(host.run(['levels 0']).slice(1)).toEqual(levels)
      for (const bits of [4, 8, 10, 12, 16]) {
        const compare = Array.from({ length: 256 }, (_, i) =>
          String(player.pwm(player.luminance(i), bits)),
        )
        expect(host.run([`pwm ${2 ** bits - 1}`]).slice(1)).toEqual(compare)
      }
    })
  })
