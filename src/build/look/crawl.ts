import type { Page } from 'playwright-core'

/** A screen met on the way, by its address behind '#/'. */
export interface Met {
  address: string
  /** Screens of one kind have one: 'replay/:id'. */
  kind: string
}

/** First parts of addresses whose second part names one of many things alike. */
const OF_MANY = ['gesture', 'record', 'replay', 'light', 'session', 'join']
/** Reached by other ways than a link. */
const BY_HAND = ['stage', 'join', 'no-such-place']
const SETTLED_MS = 250

/**
 * Opens the demo library, measures it, and visits every screen that links lead to, one of each kind.
 * @param url of the built app, in a page with nothing stored yet
 * @param look called on each, the empty start first
 */
export async function visitEveryScreen(
  page: Page,
  url: string,
  look: (met: Met) => Promise<void>,
): Promise<Met[]> {
  await page.goto(url)
  await page.getByRole('button', { name: 'Load the lantern parade demo' }).waitFor()
  const seen: Met[] = [{ address: '', kind: 'empty start' }]
  await look(seen[0]!)
  await page.getByRole('button', { name: 'Load the lantern parade demo' }).click()
  await page.locator('.moves-grid').waitFor({ timeout: 120_000 })
  await measure(page)
  const waiting = ['moves', ...BY_HAND]
  while (waiting.length > 0) {
    const address = waiting.shift() ?? ''
    const kind = kindOf(address)
    if (seen.some((met) => met.kind === kind)) continue
    await open(page, address)
    const met = { address, kind }
    seen.push(met)
    await look(met)
    waiting.push(...(await linksOf(page)))
  }
  return seen
}

async function measure(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Proof', exact: true }).click()
  await page.getByRole('button', { name: 'Measure', exact: true }).click()
  await page.locator('.proof-result').waitFor({ timeout: 240_000 })
}

/** By the address bar, as a deep link does. */
async function open(page: Page, address: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash
  }, `#/${address}`)
  await page.locator('h1').first().waitFor()
  await page.waitForTimeout(SETTLED_MS)
}

async function linksOf(page: Page): Promise<string[]> {
  const links = await page.locator('a[href^="#/"]').evaluateAll((anchors) => {
    return anchors.map((anchor) => anchor.getAttribute('href') ?? '')
  })
  return links.map((link) => link.slice(2))
}

function kindOf(address: string): string {
  const [first = '', ...rest] = address.split('/')
  if (OF_MANY.includes(first) && rest.length > 0 && !/^(led|cells)$/.test(rest[0] ?? '')) {
    return [first, ':id', ...rest.slice(1)].join('/')
  }
  const named = rest.map((part) => (/^[a-z]{2,12}$/.test(part) ? part : ':id'))
  return [first, ...named].join('/')
}
