import { describe, it } from 'vitest'
import { findTool, installLine, missingTools, type Tool } from '../../src/build/tools'

export { findTool, type Tool }

/**
 * A group of tests that runs only with these tools. Without them it is reported as skipped, with
 * the line that installs them; with CI=true it fails instead, as nothing may go untested there.
 */
export function describeWithTools(name: string, tools: Tool[], body: () => void): void {
  const missing = missingTools(tools)
  if (missing.length === 0) {
    describe(name, body)
    return
  }
  const install = installLine(missing)
  if (process.env.CI === 'true') {
    describe(name, () => {
      it(`needs ${missing.join(', ')}`, () => {
        throw new Error(`${missing.join(', ')} not found. Install with: ${install}`)
      })
    })
  } else {
    describe.skip(`${name} [skipped; to run it: ${install}]`, body)
  }
}
