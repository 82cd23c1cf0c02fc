import type { Page } from 'playwright-core'
import { MOVES } from '../../shared/words/en/moves'
import { PROOF } from '../../shared/words/en/proof'
import { SHELL } from '../../shared/words/en/shell'
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
  await openDemo(page, url, meet)
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

/**
 * What links lead to alone, of an app in any language.
 * @param say how the app has what the words say in English
 */
export async function visitLinks(
  page: Page,
  url: string,
  look: (met: Met) => Promise<void>,
  say: (english: string) => string,
): Promise<void> {
  await openDemo(page, url, look, say)
  const seen: Met[] = []
  await follow(page, ['moves'], seen, async (met) => {
    seen.push(met)
    await look(met)
  })
}

/** Looks at the empty start, loads the demo library and measures it. */
async function openDemo(
  page: Page,
  url: string,
  look: (met: Met) => Promise<void>,
  say = (english: string) => english,
): Promise<void> {
  await page.goto(url)
  const load = page.getByRole('button', { name: say(MOVES.loadDemo) })
  await load.waitFor()
  await look({ address: '', kind: 'empty start' })
  await load.click()
  await page.locator('.moves-grid').waitFor({ timeout: 120_000 })
  await page.getByRole('link', { name: say(SHELL.proof), exact: true }).click()
  await page.getByRole('button', { name: say(PROOF.measure), exact: true }).click()
  await page.locator('.proof-result').waitFor({ timeout: 240_000 })
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
