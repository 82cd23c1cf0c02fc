import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import type { Met } from './crawl'

/** A small phone, a usual one, a tablet, a desk, and a phone held sideways; CSS pixels. */
export const SIZES = [
  { width: 360, height: 780 },
  { width: 412, height: 915 },
  { width: 820, height: 1180 },
  { width: 1280, height: 800 },
  { width: 780, height: 360 },
] as const

export const THEMES = { night: 'dark', day: 'light' } as const

const USUAL = { width: 412, height: 915 }
/** Longer screens than this end here. */
const MOST_PX = 6000
/** A drawing follows its new width. */
const SETTLED_MS = 200

/** What takes all pictures of a screen into the folder. */
export function photographer(page: Page, folder: string): (met: Met) => Promise<void> {
  let count = 0
  return async ({ kind }) => {
    count += 1
    const name = `${String(count).padStart(2, '0')}-${kind.replaceAll(/[^a-z0-9]+/g, '-')}.png`
    for (const size of SIZES) {
      await page.setViewportSize(size)
      for (const [theme, colorScheme] of Object.entries(THEMES)) {
        await page.emulateMedia({ colorScheme })
        await page.waitForTimeout(SETTLED_MS)
        const into = join(folder, `${size.width}x${size.height}-${theme}`)
        mkdirSync(into, { recursive: true })
        await page.screenshot({ path: join(into, name) })
      }
    }
    await page.emulateMedia({ colorScheme: 'dark' })
    await page.setViewportSize(USUAL)
    await page.setViewportSize({ ...USUAL, height: await unrolledHeight(page) })
    await page.waitForTimeout(SETTLED_MS)
    await page.screenshot({ path: join(folder, 'whole', name) })
    await page.setViewportSize(USUAL)
  }
}

/** Height at which nothing of the screen has to be scrolled. */
async function unrolledHeight(page: Page): Promise<number> {
  const hidden = await page.evaluate(() => {
    const parts = [...document.querySelectorAll('.screen-scroll')]
    return Math.max(0, ...parts.map((part) => part.scrollHeight - part.clientHeight))
  })
  return Math.min(USUAL.height + hidden, MOST_PX)
}
