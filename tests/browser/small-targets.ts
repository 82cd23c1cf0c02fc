import type { Page } from 'playwright-core'

/** A thumb's width one way, and what WCAG 2.2 (2.5.8) asks for the other way, CSS pixels. */
const LONG_PX = 44
const SHORT_PX = 24

/**
 * What can be tapped but is too small for it, with its size. A link within a sentence is as high as its
 * line, as WCAG allows; a control with a label of its own around it is as large as that label.
 */
export async function smallTargets(page: Page): Promise<string[]> {
  const targets = await page.evaluate(() => {
    const all = [...document.querySelectorAll('a[href], button, input, select, textarea, summary')]
    return all
      .filter((one) => one.checkVisibility() && !one.matches('p a'))
      .map((one) => {
        const own = one.closest('label') ?? one
        const { width, height } = own.getBoundingClientRect()
        const name = one.getAttribute('aria-label') ?? own.textContent ?? ''
        return { name: `${one.localName} "${name.trim().slice(0, 40)}"`, width, height }
      })
  })
  return targets
    .filter(({ width, height }) => width > 0 && height > 0)
    .filter(({ width, height }) => {
      return Math.max(width, height) < LONG_PX - 0.5 || Math.min(width, height) < SHORT_PX - 0.5
    })
    .map(({ name, width, height }) => `${name} is ${Math.round(width)} × ${Math.round(height)} px`)
}
