import { BareChromium as Bare, type PageSession } from '../../src/build/bare-chromium'
import { findTool } from '../support/tools'

export type { PageSession }

/** The browser of this machine, spoken to by DevTools messages alone. */
export class BareChromium extends Bare {
  constructor(profileFolder: string, extraArguments: readonly string[] = []) {
    const path = findTool('chromium')
    if (path === null) throw new Error('No Chromium: guard with describeWithTools().')
    super(path, profileFolder, extraArguments)
  }
}
