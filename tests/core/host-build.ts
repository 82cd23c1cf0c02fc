import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))
const coreDir = join(root, 'src/core')

/** The harness built by a C compiler of the host, in a folder of its own. */
export class HostBuild {
  private readonly folder = mkdtempSync(join(tmpdir(), 'movewright-core-'))
  private readonly program: string

  constructor(compiler: string, flags: string[]) {
    this.program = join(this.folder, 'harness')
    const sources = readdirSync(coreDir)
      .filter((name) => /^mvw_.*\.c$/.test(name))
      .map((name) => join(coreDir, name))
    execFileSync(
      compiler,
      [
        '-std=c99',
        '-Wall',
        '-Wextra',
        '-Wpedantic',
        '-Wconversion',
        '-Wshadow',
        '-Werror',
        ...flags,
        `-I${coreDir}`,
        ...sources,
      ].concat(['-c']),
      { cwd: this.folder },
    )
    // The harness itself is test code: built without -Wconversion.
    const objects = readdirSync(this.folder).filter((name) => name.endsWith('.o'))
    execFileSync(
      compiler,
      ['-std=c99', '-Wall', '-Wextra', '-Wpedantic', '-Werror', ...flags, `-I${coreDir}`].concat(
        join(root, 'tests/core/harness.c'),
        objects,
        ['-o', this.program],
      ),
      { cwd: this.folder },
    )
  }

  /** Lines the harness prints; throws when a sanitizer ended it. */
  run(model: Uint8Array, samples: Int16Array | null, ...args: string[]): string[] {
    const modelPath = join(this.folder, 'model')
    const samplesPath = join(this.folder, 'samples')
    writeFileSync(modelPath, model)
    writeFileSync(samplesPath, new Uint8Array((samples ?? new Int16Array()).slice().buffer))
    const out = execFileSync(this.program, [modelPath, samplesPath, ...args], {
      encoding: 'utf8',
      maxBuffer: 1 << 28,
      env: { ...process.env, UBSAN_OPTIONS: 'halt_on_error=1', ASAN_OPTIONS: 'detect_leaks=0' },
    })
    return out.split('\n').filter((line) => line !== '')
  }

  dispose(): void {
    rmSync(this.folder, { recursive: true, force: true })
  }
}
