import { afterAll, beforeAll, expect, it } from 'vitest'
import type { RunningServer } from '../../src/build/static-server'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { openRig, type Rig } from './rig'

/** What has the focus, and whether it, its label or the option it stands for has an outline. */
const FOCUSED = `(() => {
  const one = document.activeElement
  if (one === null || one === document.body) return null
  const shown = [one, one.nextElementSibling, one.closest('label')].filter((part) => part !== null)
  const seen = shown.some((part) => {
    const { outlineStyle, outlineWidth } = getComputedStyle(part)
    return outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2
  })
  return { name: one.localName + ' ' + (one.ariaLabel ?? one.textContent.trim().slice(0, 30)), seen }
})()`

/** Colours that must differ where one thing is told from another by its ground. */
const TOLD_APART = `(() => {
  const ground = (selector) => getComputedStyle(document.querySelector(selector)).backgroundColor
  return {
    chosen: [ground('.choice-option input:checked + span'), ground('.choice-option input:not(:checked) + span')],
    pressed: [ground('.button[aria-pressed="true"]'), ground('.button:not([aria-pressed])')],
    amber: [ground('.button-amber:not(:disabled)'), ground('.button-plain:not([aria-pressed])')],
  }
})()`

describeWithTools('the gallery', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig

  beforeAll(async () => {
    server = await serveBuiltApp()
    rig = await openRig()
    await rig.page.emulateMedia({ reducedMotion: 'reduce' })
    await rig.open(`${server.url}#/gallery`)
    await rig.page.getByRole('heading', { name: 'Icons' }).waitFor()
  })
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
  })

  it('shows where the focus is at every stop of the Tab key', async () => {
    const unseen: string[] = []
    const stops = new Set<string>()
    for (let n = 0; n < 80; n++) {
      await rig.page.keyboard.press('Tab')
      const focused = await rig.look<{ name: string; seen: boolean } | null>(FOCUSED)
      if (focused === null) break
      stops.add(focused.name)
      if (!focused.seen) unseen.push(focused.name)
    }
    expect(stops.size).toBeGreaterThan(20)
    expect(unseen).toEqual([])
  })

  it('tells the chosen, the pressed and the next thing to do apart in forced colours', async () => {
    for (const colorScheme of ['dark', 'light'] as const) {
      await rig.page.emulateMedia({ colorScheme, forcedColors: 'active' })
      const pairs = await rig.look<Record<string, [string, string]>>(TOLD_APART)
      for (const [what, [one, other]] of Object.entries(pairs)) {
        expect(one, `${what}, ${colorScheme}`).not.toBe(other)
      }
    }
    await rig.page.emulateMedia({ forcedColors: null })
  })

  it('keeps the place of a part that has nothing to show', async () => {
    const empty = rig.page.locator('.gallery-state', { hasText: 'no takes' }).locator('svg').first()
    expect(await empty.boundingBox()).toMatchObject({ width: 72, height: 72 })
    await expect(empty.locator('path').count()).resolves.toBe(0)
  })
})
