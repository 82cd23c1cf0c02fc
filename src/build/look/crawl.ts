import type { Page } from 'playwright-core'
import { beginEmptyLibrary, EMPTY_PLACES, open, SCENES } from './by-hand'

/** A screen met on the way, by its address behind '#/'. */
export interface Met {
  address: string
  /** Screens of one kind have one: 'replay/:id'. */
  kind: string
}

/** First parts of addresses whose second part names one of many things alike. */
const OF_MANY = ['gesture', 'record', 'replay', 'light', 'session', 'join']
/** No link leads here: a code that was cut, and an address that nobody knows. */
const STRAYED = ['join', 'no-such-place']

/**
 * Opens the demo library, measures it, and visits every screen that links lead to, one of each kind;
 * then what only taps lead to, and last each place of a library in which nothing was recorded.
 * @param url of the built app, in a page with nothing stored yet
 * @param look called on each, the empty start first
 */
export async function visitEveryScreen(
  page: Page,
  url: string,
  look: (met: Met) => Promise<void>,
): Promise<Met[]> {
  const seen: Met[] = []
  const meet = async (met: Met) => {
    seen.push(met)
    await look(met)
  }
  await page.goto(url)
  await page.getByRole('button', { name: 'Load the lantern parade demo' }).waitFor()
  await meet({ address: '', kind: 'empty start' })
  await page.getByRole('button', { name: 'Load the lantern parade demo' }).click()
  await page.locator('.moves-grid').waitFor({ timeout: 120_000 })
  await measure(page)
  await follow(page, ['moves', ...STRAYED], seen, meet)
  for (const { kind, reach } of SCENES) {
    await reach(page)
    await meet({ address: await addressOf(page), kind })
    if (kind === 'plan written') await follow(page, await linksOf(page), seen, meet)
  }
  await beginEmptyLibrary(page)
  for (const address of EMPTY_PLACES) {
    await open(page, address)
    await meet({ address, kind: `${address} of an empty library` })
  }
  return seen
}

/** Visits these and what their links lead to, unless one of the kind was met before. */
async function follow(
  page: Page,
  from: string[],
  seen: Met[],
  meet: (met: Met) => Promise<void>,
): Promise<void> {
  const waiting = [...from]
  while (waiting.length > 0) {
    const address = waiting.shift() ?? ''
    const kind = kindOf(address)
    if (seen.some((met) => met.kind === kind)) continue
    await open(page, address)
    await meet({ address, kind })
    waiting.push(...(await linksOf(page)))
  }
}

async function measure(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Proof', exact: true }).click()
  await page.getByRole('button', { name: 'Measure', exact: true }).click()
  await page.locator('.proof-result').waitFor({ timeout: 240_000 })
}

async function addressOf(page: Page): Promise<string> {
  return page.evaluate(() => location.hash.slice(2))
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
