import { readlinkSync } from 'node:fs'
import { join } from 'node:path'
import type { BrowserContext, CDPSession, Page } from 'playwright-core'
import { makeProfile, openChromium } from '../support/chromium'
import { evaluate, waitUntil } from './page-expressions'
import { type SensorType, VirtualSensors } from './virtual-sensors'

export interface RigOptions {
  /** Sensors that the phone has; none for a desk. */
  sensors?: readonly SensorType[]
  /** Profile to start on again; by default a fresh one. */
  profile?: Profile
  arguments?: string[]
}

export type Profile = ReturnType<typeof makeProfile>

/** A real browser with one page, virtual sensors, and ways to end it. */
export interface Rig {
  context: BrowserContext
  page: Page
  session: CDPSession
  sensors: VirtualSensors
  profile: Profile
  /** Opens an address; the sensors are on before the page can listen. */
  open(url: string): Promise<void>
  /** Value of an expression in the page. Counts as no tap, unlike Playwright's `evaluate`. */
  look<T>(expression: string): Promise<T>
  /** Waits until an expression in the page is true. */
  until(expression: string, timeoutMs?: number): Promise<void>
  /** Kills the browser as a power cut would; the profile stays. */
  kill(): Promise<void>
  /** Ends the browser in order; the profile stays. */
  close(): Promise<void>
}

export async function openRig(options: RigOptions = {}): Promise<Rig> {
  const profile = options.profile ?? makeProfile()
  const context = await openChromium(profile.folder, options.arguments)
  const page = context.pages()[0] ?? (await context.newPage())
  const session = await context.newCDPSession(page)
  const sensors = new VirtualSensors(session, options.sensors)
  return {
    context,
    page,
    session,
    sensors,
    profile,
    open: async (url) => {
      await sensors.enable()
      await page.goto(url)
    },
    look: (expression) => evaluate(session, expression),
    until: (expression, timeoutMs) => waitUntil(session, expression, timeoutMs),
    kill: () => killBrowser(context, profile),
    close: () => context.close(),
  }
}

/** The browser itself leaves its process number in the profile: a link named host-number. */
async function killBrowser(context: BrowserContext, profile: Profile): Promise<void> {
  const owner = readlinkSync(join(profile.folder, 'SingletonLock'))
  const pid = Number(/-(\d+)$/.exec(owner)?.[1])
  if (!Number.isInteger(pid)) throw new Error(`No process number in ${owner}.`)
  const closed = new Promise<void>((resolve) => context.on('close', () => resolve()))
  process.kill(pid, 'SIGKILL')
  await closed
}
