import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type Met, visitEveryScreen } from '../../src/build/look/crawl'
import type { RunningServer } from '../../src/build/static-server'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { openRig, type Rig } from './rig'
import { smallTargets } from './small-targets'

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const THEMES = ['dark', 'light'] as const

interface Violation {
  id: string
  help: string
  nodes: { target: string[]; failureSummary?: string }[]
}

interface Axe {
  run(options: object): Promise<{ violations: unknown[] }>
}

/**
 * One sentence a violation of WCAG 2.2 A and AA or of good practice, as axe-core has them.
 * @param rule the only one asked for; by default all that axe-core runs by itself
 */
async function complaints(page: Page, where: string, rule?: string): Promise<string[]> {
  const violations = await page.evaluate(async (only) => {
    const { axe } = globalThis as unknown as { axe: Axe }
    const options = only === undefined ? {} : { runOnly: { type: 'rule', values: [only] } }
    return (await axe.run(options)).violations
  }, rule)
  return (violations as Violation[]).flatMap(({ id, help, nodes }) =>
    nodes.map(
      ({ target, failureSummary = '' }) =>
        `${where}: ${id} (${help}) at ${target.join(' ')}: ${failureSummary.split('\n').at(-1)?.trim()}`,
    ),
  )
}

describeWithTools('every screen, and each state that taps lead to', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig
  let met: Met[] = []
  const found: string[] = []
  const wide: string[] = []
  const faint: string[] = []
  const small: string[] = []
  const requested = new Set<string>()
  const errors: string[] = []

  async function look({ kind }: Met): Promise<void> {
    for (const theme of THEMES) {
      await rig.page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
      found.push(...(await complaints(rig.page, `${kind} ${theme}`)))
    }
    for (const theme of THEMES) {
      await rig.page.emulateMedia({ colorScheme: theme, contrast: 'more' })
      faint.push(...(await complaints(rig.page, `${kind} ${theme}`, 'color-contrast-enhanced')))
    }
    await rig.page.emulateMedia({ contrast: null, forcedColors: 'active' })
    faint.push(...(await complaints(rig.page, `${kind}, forced colours`, 'color-contrast')))
    await rig.page.emulateMedia({ contrast: null, forcedColors: null })
    small.push(...(await smallTargets(rig.page)).map((one) => `${kind}: ${one}`))
    const over = await rig.page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    )
    if (over > 0) wide.push(`${kind} is ${over} px wider than the phone`)
  }

  beforeAll(async () => {
    server = await serveBuiltApp()
    rig = await openRig()
    // Not through a script element: the app's own policy would refuse it, rightly.
    await rig.page.addInitScript(AXE)
    rig.page.on('request', (request) => requested.add(request.url()))
    rig.page.on('pageerror', ({ message }) => errors.push(message))
    rig.page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text())
    })
    met = await visitEveryScreen(rig.page, server.url, look)
  }, 1_500_000)
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
  })

  it('is met by following links from the four places on, and by tapping on', () => {
    const kinds = met.map(({ kind }) => kind)
    expect(kinds).toEqual(
      expect.arrayContaining(['moves', 'try', 'proof', 'prop', 'gesture/:id', 'replay/:id']),
    )
    expect(kinds).toEqual(
      expect.arrayContaining(['stage running', 'session running', 'proof of an empty library']),
    )
    expect(kinds.length).toBeGreaterThan(60)
  })

  it('has no violation that axe-core finds, by night and by day', () => {
    expect(found).toEqual([])
  })

  it('reads at 7 to 1 where more contrast is asked for, and at 4.5 to 1 in forced colours', () => {
    expect(faint).toEqual([])
  })

  it('has nothing to tap that is smaller than 44 px one way and 24 px the other', () => {
    expect(small).toEqual([])
  })

  it('is no wider than the phone', () => {
    expect(wide).toEqual([])
  })

  it('asks nobody but the server it came from', () => {
    const strange = [...requested].filter(
      (url) => !url.startsWith(server.url) && !/^(blob|data):/.test(url),
    )
    expect(requested.size).toBeGreaterThan(5)
    expect(strange).toEqual([])
  })

  it('breaks no rule of its content policy and throws nothing', () => {
    expect(errors).toEqual([])
  })
})
