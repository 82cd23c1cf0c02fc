import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { buildApp } from './build'
import { DIST } from './paths'

export interface ServeArguments {
  port: number
  /** Serve dist as it is. */
  built: boolean
  /** Address for the QR code, of several. */
  address: string | undefined
}

/** Arguments common to `npm start` and `npm run phone`. Throws one sentence on a wrong one. */
export function readArguments(defaultPort: number, args = process.argv.slice(2)): ServeArguments {
  const { values } = parseArgs({
    args,
    options: {
      port: { type: 'string', default: process.env.PORT ?? String(defaultPort) },
      built: { type: 'boolean', default: false },
      address: { type: 'string' },
    },
  })
  const port = Number(values.port)
  if (!Number.isInteger(port) || port < 1 || port > 65_515) {
    throw new Error(`"${values.port}" is not a port. Give a whole number from 1 to 65515.`)
  }
  return { port, built: values.built, address: values.address }
}

/** Builds, unless asked to serve what is there. */
export async function prepareDist({ built }: ServeArguments): Promise<void> {
  if (!built) await buildApp()
  else if (!existsSync(join(DIST, 'index.html'))) {
    throw new Error('There is nothing built yet. Leave out --built.')
  }
}

/** Says so when the server had to move; empty otherwise. */
export function movedNotice(wanted: number, got: number): string {
  return wanted === got ? '' : `Port ${wanted} is taken, so this is port ${got}.\n`
}

/** Runs a command; on failure prints its sentence, without a stack, and ends with status 1. */
export async function runCommand(command: () => Promise<void>): Promise<void> {
  try {
    await command()
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error))
    process.exitCode = 1
  }
}
