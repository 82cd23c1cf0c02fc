import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium } from 'playwright-core'
import { CHROMIUM_ARGUMENTS } from '../../src/build/chromium'
import { findTool } from './tools'

export { CHROMIUM_ARGUMENTS }

/** A fresh folder for a browser profile; `remove` it at the end. */
export function makeProfile(): { folder: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'movewright-profile-'))
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) }
}

/** Starts a real browser on a profile, with a phone-sized page. Close it at the end. */
export async function openChromium(
  profileFolder: string,
  extraArguments: string[] = [],
): Promise<BrowserContext> {
  const executablePath = findTool('chromium')
  if (executablePath === null) throw new Error('No Chromium: guard with describeWithTools().')
  return chromium.launchPersistentContext(profileFolder, {
    executablePath,
    headless: true,
    args: [...CHROMIUM_ARGUMENTS, ...extraArguments],
    viewport: { width: 390, height: 844 },
    hasTouch: true,
  })
}
