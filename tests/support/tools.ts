import { accessSync, constants } from 'node:fs'
import { delimiter, join } from 'node:path'
import { describe, it } from 'vitest'

/** System tools that some tests need, with the Debian package that brings them. */
const PACKAGES = {
  chromium: 'chromium',
  gcc: 'gcc',
  clang: 'clang',
  make: 'make',
  cmake: 'cmake',
  'arm-none-eabi-gcc': 'gcc-arm-none-eabi',
  'avr-gcc': 'gcc-avr avr-libc',
  simavr: 'simavr',
  'qemu-system-arm': 'qemu-system-arm',
} as const

export type Tool = keyof typeof PACKAGES

/** Full path of a tool, or null. CHROMIUM in the environment names another browser. */
export function findTool(tool: Tool): string | null {
  const named = tool === 'chromium' ? process.env.CHROMIUM : undefined
  if (named !== undefined) return named
  const folders = (process.env.PATH ?? '').split(delimiter)
  return folders.map((folder) => join(folder, tool)).find(isExecutable) ?? null
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}

/**
 * A group of tests that runs only with these tools. Without them it is reported as skipped, with
 * the line that installs them; with CI=true it fails instead, as nothing may go untested there.
 */
export function describeWithTools(name: string, tools: Tool[], body: () => void): void {
  const missing = tools.filter((tool) => findTool(tool) === null)
  if (missing.length === 0) {
    describe(name, body)
    return
  }
  const install = `apt-get install ${missing.map((tool) => PACKAGES[tool]).join(' ')}`
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
