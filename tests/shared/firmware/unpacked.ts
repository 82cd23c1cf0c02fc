import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { unzipSync } from 'fflate'
import { type FirmwareInput, makeFirmwareBundle } from '../../../src/shared/firmware/bundle'

/** A bundle unpacked in a folder of its own, as a designer has it after the download. */
export class Unpacked {
  readonly folder = mkdtempSync(join(tmpdir(), 'movewright-bundle-'))

  constructor(input: FirmwareInput) {
    const bundle = makeFirmwareBundle(input)
    if (!bundle.ok) throw new Error(bundle.message)
    for (const [path, bytes] of Object.entries(unzipSync(bundle.value))) {
      mkdirSync(dirname(join(this.folder, path)), { recursive: true })
      writeFileSync(join(this.folder, path), bytes)
    }
  }

  /** Runs a command in the folder; all it says, and its exit status. */
  run(command: string, ...args: string[]): { status: number; output: string } {
    try {
      const output = execFileSync(command, args, {
        cwd: this.folder,
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'pipe'],
        env: { ...process.env, UBSAN_OPTIONS: 'halt_on_error=1', ASAN_OPTIONS: 'detect_leaks=0' },
      })
      return { status: 0, output }
    } catch (error) {
      const { status, stdout, stderr } = error as Record<string, unknown>
      return { status: Number(status ?? -1), output: `${stdout}${stderr}` }
    }
  }

  write(path: string, text: string): void {
    writeFileSync(join(this.folder, path), text)
  }

  dispose(): void {
    rmSync(this.folder, { recursive: true, force: true })
  }
}
