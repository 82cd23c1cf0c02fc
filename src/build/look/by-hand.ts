import type { Page } from 'playwright-core'

/** A screen, or a state of one, that no link leads to. */
export interface Scene {
  kind: string
  /** Brings the page there. Scenes build on those before them. */
  reach: (page: Page) => Promise<void>
}

const WAIT = { timeout: 30_000 }
/** A movement of the simulated phone, its segment and its answer. */
const MOVEMENT_MS = 3500

/** Scenes of the demo library, in this order. */
export const SCENES: Scene[] = [
  {
    kind: 'plan written',
    reach: async (page) => {
      await open(page, 'collect')
      await tap(page, 'Write a plan')
      await page.locator('.screen-foot').getByRole('link').first().waitFor(WAIT)
    },
  },
  {
    kind: 'try running',
    reach: async (page) => {
      await open(page, 'try')
      await tap(page, /simulated phone/)
      await perform(page)
    },
  },
  {
    kind: 'record running',
    reach: async (page) => {
      await page.getByRole('button', { name: 'Stop', exact: true }).click()
      await open(page, 'moves')
      await page.locator('.moves-grid a').first().click()
      await page.locator('a[href^="#/record/"]').first().click()
      const phone = page.getByRole('button', { name: /simulated phone/i }).first()
      if (await phone.isVisible().catch(() => false)) await phone.click()
      await perform(page)
    },
  },
  {
    kind: 'teach running',
    reach: async (page) => {
      await open(page, 'teach')
      await tap(page, 'Start with the simulated phone')
      await perform(page)
    },
  },
  {
    kind: 'stage warning',
    reach: async (page) => {
      await open(page, 'stage')
      await tap(page, 'Begin with the simulated phone')
      await page.getByRole('button', { name: 'Begin', exact: true }).waitFor(WAIT)
    },
  },
  {
    kind: 'stage running',
    reach: async (page) => {
      await tap(page, 'Begin')
      await page.locator('.stage-light').waitFor(WAIT)
      await page.waitForTimeout(MOVEMENT_MS)
    },
  },
  {
    kind: 'join',
    reach: async (page) => {
      await page.keyboard.press('Escape')
      await page.getByRole('heading', { name: 'Stage' }).waitFor(WAIT)
      // The show takes its entry out of the history, which would undo a step taken meanwhile.
      await page.waitForTimeout(500)
      await open(page, 'collect')
      await page.getByRole('link', { name: 'Show the code' }).click()
      const link = await page.locator('.join-link').inputValue(WAIT)
      await open(page, link.slice(link.indexOf('#/') + 2))
    },
  },
  { kind: 'join, consent', reach: (page) => tap(page, 'Take part') },
  { kind: 'join, hand', reach: (page) => tap(page, 'I agree') },
  {
    kind: 'session without a sensor',
    reach: async (page) => {
      await tap(page, 'Right hand')
      await tap(page, /^Start/)
      await page.getByRole('button', { name: 'Use the simulated phone' }).waitFor(WAIT)
    },
  },
  {
    kind: 'session running',
    reach: async (page) => {
      await tap(page, 'Use the simulated phone')
      await page.getByText('Now: ').first().waitFor(WAIT)
    },
  },
  {
    kind: 'session in doubt',
    reach: (page) => page.getByRole('button', { name: 'Keep it' }).waitFor(WAIT),
  },
  {
    kind: 'session paused',
    reach: async (page) => {
      await tap(page, 'Again')
      await tap(page, /^Pause/)
    },
  },
  {
    kind: 'session over',
    reach: async (page) => {
      await tap(page, 'Finish')
      await page.getByRole('heading', { level: 1 }).waitFor(WAIT)
    },
  },
]

/** What the places say of a library in which nothing was recorded. */
export const EMPTY_PLACES = [
  ...['moves', 'try', 'teach', 'stage', 'proof', 'grip', 'decide', 'compare', 'report'],
  ...['prop', 'light', 'board', 'collect', 'background'],
]

/** Begins a library with nothing in it. */
export async function beginEmptyLibrary(page: Page): Promise<void> {
  await open(page, 'library')
  await tap(page, 'New library')
  await page.getByLabel('Name of the library').fill('Lantern of the north gate')
  await tap(page, 'Create')
  await page.getByRole('heading', { name: 'Lantern of the north gate' }).first().waitFor(WAIT)
}

/** By the address bar, as a deep link does. */
export async function open(page: Page, address: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash
  }, `#/${address}`)
  await page.locator('h1').first().waitFor()
  await page.waitForTimeout(250)
}

/** Waits out the half second in which a large button is deaf. */
async function tap(page: Page, name: string | RegExp): Promise<void> {
  const button = page.getByRole('button', { name, exact: true }).first()
  await button.waitFor(WAIT).catch(async (cause: unknown) => {
    throw new Error(`No button ${name} to tap. ${await shown(page)}`, { cause })
  })
  await page.waitForTimeout(600)
  await button.click()
}

/** Where the page is and how its text begins, for whoever has to find out why. */
async function shown(page: Page): Promise<string> {
  const [hash, text] = await page.evaluate(() => [location.hash, document.body.textContent])
  return `At ${hash} the page says: ${text?.slice(0, 600)}`
}

async function perform(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Swing', exact: true }).first().click(WAIT)
  await page.waitForTimeout(MOVEMENT_MS)
}
