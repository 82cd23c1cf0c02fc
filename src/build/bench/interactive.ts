import type { Browser } from 'playwright-core'
import { median } from '../../shared/statistics/summary'
import { PHONE_VIEWPORT } from '../chromium'

/** As Lighthouse's "mid-tier mobile" against a desk: the processor's speed divided by this. */
const CPU_THROTTLE = 4

/** In the page: resolves when its first button stands there and the next task gets its turn. */
const WATCH = `
  window.interactiveMs = new Promise((resolve) => {
    new MutationObserver((_, observer) => {
      if (document.querySelector('button') === null) return
      observer.disconnect()
      requestAnimationFrame(() => setTimeout(() => resolve(performance.now())))
    }).observe(document, { childList: true, subtree: true })
  })
`

/**
 * Milliseconds from the start of loading to a screen that answers a tap: a fresh browser context
 * each time (nothing cached), processor throttled, server on this computer. Both addresses in turn,
 * so that other work on the machine meets both.
 * @returns the median of each address
 */
export async function interactiveMs(
  browser: Browser,
  urls: readonly string[],
  repeats: number,
): Promise<number[]> {
  const times: number[][] = urls.map(() => [])
  for (let round = 0; round < repeats; round++) {
    for (const [index, url] of urls.entries()) times[index]?.push(await loadOnce(browser, url))
  }
  return times.map(median)
}

async function loadOnce(browser: Browser, url: string): Promise<number> {
  const context = await browser.newContext({ viewport: PHONE_VIEWPORT })
  try {
    const page = await context.newPage()
    const session = await context.newCDPSession(page)
    await session.send('Emulation.setCPUThrottlingRate', { rate: CPU_THROTTLE })
    await page.addInitScript(WATCH)
    await page.goto(url)
    const { result } = await session.send('Runtime.evaluate', {
      expression: 'window.interactiveMs',
      awaitPromise: true,
      returnByValue: true,
    })
    return result.value as number
  } finally {
    await context.close()
  }
}
