import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { unzipSync } from 'fflate'
import { listFiles } from '../list-files'
import { repositoryPath } from '../paths'

const LONGEST_RUN_MS = 300_000

/** An exported bundle unpacked in a folder of its own, as a designer has it after the download. */
export class Workshop {
  readonly folder = mkdtempSync(join(tmpdir(), 'movewright-target-'))

  constructor(bundle: Uint8Array) {
    for (const [path, bytes] of Object.entries(unzipSync(bundle))) {
      mkdirSync(dirname(join(this.folder, path)), { recursive: true })
      writeFileSync(join(this.folder, path), bytes)
    }
  }

  /**
   * Runs a command in the folder.
   * @returns what it printed on both channels
   * @throws Error with its words when it cannot be run, fails, or does not end
   */
  run(command: string, args: readonly string[], input = ''): { out: string; err: string } {
    const done = spawnSync(command, args, {
      cwd: this.folder,
      encoding: 'utf8',
      input,
      maxBuffer: 1 << 28,
      timeout: LONGEST_RUN_MS,
      env: { ...process.env, UBSAN_OPTIONS: 'halt_on_error=1', ASAN_OPTIONS: 'detect_leaks=0' },
    })
    if (done.error || done.status !== 0) {
      const words = `${done.stderr ?? ''}\n${done.stdout ?? ''}`.trim().slice(-2000)
      throw new Error(`${command} ${args.join(' ')}\n${done.error?.message ?? ''}${words}`)
    }
    return { out: done.stdout, err: done.stderr }
  }

  /** Paths below a folder of the bundle with one ending, sorted. */
  files(folder: string, ending: string): string[] {
    return listFiles(join(this.folder, folder))
      .filter((path) => path.endsWith(ending))
      .map((path) => `${folder}/${path}`)
  }

  text(path: string): string {
    return readFileSync(join(this.folder, path), 'utf8')
  }

  dispose(): void {
    rmSync(this.folder, { recursive: true, force: true })
  }
}

/** Path of a C file of the measurement, which is not part of the bundle. */
export function probeFile(name: string): string {
  return repositoryPath(`src/build/target/c/${name}`)
}
