import type { Page } from 'playwright-core'

/** Everything that is read or spoken on a page, each text once. */
export async function textsOf(page: Page): Promise<string[]> {
  const texts = await page.evaluate(() => {
    const attributes = ['aria-label', 'title', 'alt', 'placeholder', 'aria-valuetext']
    const found: string[] = []
    const read = (root: Document | ShadowRoot) => {
      const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT)
      while (walker.nextNode()) {
        const inside = walker.currentNode.parentElement?.closest(
          'style, script, pre, code, noscript, [translate=no]',
        )
        if (inside === null) found.push(walker.currentNode.textContent ?? '')
      }
      for (const element of root.querySelectorAll('*')) {
        found.push(...attributes.map((name) => element.getAttribute(name) ?? ''))
        if (element.shadowRoot !== null) read(element.shadowRoot)
      }
    }
    read(document)
    return found
  })
  return [...new Set(texts.map((text) => text.trim()).filter((text) => text !== ''))]
}

/** What is no language: names of testers, parts and files, figures with units, months of a date. */
const NO_WORDS = [
  /\b(Movewright|Cortex-M\d\+?|AVR|Chromium|Chrome|HeadlessChrome|Linux|Android)\b/g,
  /\b[\w.-]+\.(zip|csv|md|c|h|json|html|com|org|txt)\b/g,
  /\b(?=[a-f]*\d)[\da-f]{6,}\b/g,
  /\b[A-Z]{1,8}[\d.-]+[A-Z\d-]*\b/g,
  /\b(?:[µmnkMG]?(?:Hz|Ω|[smVAgBWhn])|mAh|[KMG]iB|kB|m?deg\/s|rad\/s|m\/s²|lsb|px|[ag][xyz])\b/g,
]

/** Texts in which a word of two letters or more stands that no pseudo-language has changed. */
export function plainTexts(texts: readonly string[]): string[] {
  return texts.filter((text) => {
    const rest = NO_WORDS.reduce((left, pattern) => left.replace(pattern, ' '), text)
    return /(?<![\p{L}\d])[A-Za-z]{2,}(?![\p{L}\d])/u.test(rest)
  })
}
