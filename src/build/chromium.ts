import { type Browser, chromium } from 'playwright-core'
import { needTool } from './tools'

/** Flags for a quiet browser that phones nobody. */
export const CHROMIUM_ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** The size of a usual phone's page, in CSS pixels. */
export const PHONE_VIEWPORT = { width: 390, height: 844 }

/** A real browser for measurements; each of its contexts starts with nothing stored. */
export function launchChromium(extraArguments: string[] = []): Promise<Browser> {
  return chromium.launch({
    executablePath: needTool('chromium'),
    headless: true,
    args: [...CHROMIUM_ARGUMENTS, ...extraArguments],
  })
}
