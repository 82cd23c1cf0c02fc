import { accessSync, constants } from 'node:fs'
import { delimiter, join } from 'node:path'

/** System tools that commands and tests need, with the Debian packages that bring them. */
const PACKAGES = {
  chromium: 'chromium',
  gcc: 'gcc libc6-dev',
  clang: 'clang',
  make: 'make',
  cmake: 'cmake',
  'arm-none-eabi-gcc': 'gcc-arm-none-eabi',
  'avr-gcc': 'gcc-avr avr-libc',
  simavr: 'simavr',
  'qemu-system-arm': 'qemu-system-arm',
  's390x-linux-gnu-gcc': 'gcc-s390x-linux-gnu libc6-dev-s390x-cross',
  'qemu-s390x': 'qemu-user',
  python3: 'python3',
  lighttpd: 'lighttpd lighttpd-mod-webdav',
} as const

export type Tool = keyof typeof PACKAGES

/** Full path of a tool, or null. CHROMIUM in the environment names another browser. */
export function findTool(tool: Tool): string | null {
  const named = tool === 'chromium' ? process.env.CHROMIUM : undefined
  if (named !== undefined) return named
  // Servers lie where only the administrator's path leads.
  const folders = [...(process.env.PATH ?? '').split(delimiter), '/usr/sbin']
  return folders.map((folder) => join(folder, tool)).find(isExecutable) ?? null
}

/** As findTool. Throws one sentence with the line that installs it. */
export function needTool(tool: Tool): string {
  const path = findTool(tool)
  if (path === null) throw new Error(`${tool} is not here. Install it: ${installLine([tool])}`)
  return path
}

export function missingTools(tools: readonly Tool[]): Tool[] {
  return tools.filter((tool) => findTool(tool) === null)
}

/** The command that installs them. */
export function installLine(tools: readonly Tool[]): string {
  return `apt-get install ${tools.map((tool) => PACKAGES[tool]).join(' ')}`
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}
