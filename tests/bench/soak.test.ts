import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { INTERPRETED } from '../../src/build/bench/soak'
import { SoakedApp } from '../../src/build/bench/soak/drive'
import { growthOf } from '../../src/build/bench/soak/growth'
import type { Reading } from '../../src/build/bench/soak/readings'
import { launchChromium } from '../../src/build/chromium'
import type { RunningServer } from '../../src/build/static-server'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'

describe('growth once settled', () => {
  it('is nothing for a warm-up that levels off, whatever its noise', () => {
    const level = [10, 60, 99, 101, 100, 99, 101, 100]
    expect(Math.abs(growthOf(level))).toBeLessThanOrEqual(1)
  })

  it('is what a steady leak adds in half of the time', () => {
    const leak = Array.from({ length: 16 }, (_, round) => 500 + 20 * round)
    expect(growthOf(leak)).toBe(20 * 8)
  })

  it('is not told from a handful of readings', () => {
    expect(() => growthOf([1, 2, 3, 4, 5, 6, 7])).toThrow(/7 readings are too few/)
  })
})

const ROUNDS = 8
const ROUND = { stageMinutes: 1, recordMinutes: 0.5 }
const LEAK_BYTES = 400_000
/** For a busy machine. */
const LONGEST_MS = 240_000

/** The meter of `npm run bench -- soak` on minutes instead of hours. */
describeWithTools('the soak', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let browser: Browser

  beforeAll(async () => {
    server = await serveBuiltApp()
    browser = await launchChromium(INTERPRETED)
  })
  afterAll(async () => {
    await browser?.close()
    await server?.close()
  })

  async function soak(leakBytes: number): Promise<{ app: SoakedApp; readings: Reading[] }> {
    const app = await SoakedApp.open(browser, server.url)
    const readings: Reading[] = []
    for (let round = 0; round < ROUNDS; round++) {
      if (leakBytes > 0) await app.leak(leakBytes)
      readings.push(await app.spend(ROUND))
    }
    return { app, readings }
  }

  it(
    'finds heap, database, journals and workers level while movements are answered',
    async () => {
      const { app, readings } = await soak(0)
      expect(growthOf(readings.map(({ heapBytes }) => heapBytes))).toBeLessThan(LEAK_BYTES)
      expect(new Set(readings.map(({ rows }) => JSON.stringify(rows))).size).toBe(1)
      expect(readings.map(({ rows }) => rows.journals)).toEqual(Array(ROUNDS).fill(0))
      expect(Math.max(...readings.map(({ workers }) => workers))).toBeLessThanOrEqual(2)
      expect(await app.answered()).toBeGreaterThan(ROUNDS * 10)
      expect(app.takes).toBeGreaterThan(ROUNDS * 3)
    },
    LONGEST_MS,
  )

  it(
    'sees a leak: memory held on purpose is what the meter shows',
    async () => {
      const { readings } = await soak(LEAK_BYTES)
      const growth = growthOf(readings.map(({ heapBytes }) => heapBytes))
      expect(growth).toBeGreaterThan((ROUNDS / 2 - 1) * LEAK_BYTES)
    },
    LONGEST_MS,
  )
})
