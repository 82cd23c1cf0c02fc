import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { repositoryPath } from '../../src/build/paths'
import { effectTable } from '../../src/shared/firmware/light-source'
import type { Library } from '../../src/shared/model/library'

const STRICT = ['-std=c99', '-Wall', '-Wextra', '-Wpedantic', '-Wconversion', '-Wshadow', '-Werror']
const SANITIZE = ['-O1', '-g', '-fsanitize=address,undefined', '-fno-sanitize-recover=all']
const SOURCES = ['mvw_light.c', 'mvw_light_check.c', 'mvw_lightness.c', 'mvw_steps.c']

/** The player with a library's exported effect table, built by a compiler of the host. */
export class LightBuild {
  private readonly folder = mkdtempSync(join(tmpdir(), 'movewright-light-'))
  private readonly program: string

  constructor(compiler: string, library: Pick<Library, 'gestures' | 'light'>) {
    this.program = join(this.folder, 'light')
    const table = join(this.folder, 'effect_table.c')
    writeFileSync(table, effectTable(library as Library, 'nothing over a limit'))
    const core = repositoryPath('src/core')
    execFileSync(compiler, [
      ...STRICT,
      ...SANITIZE,
      `-I${core}`,
      `-I${repositoryPath('src/shared/firmware/templates/effects')}`,
      ...SOURCES.map((name) => join(core, name)),
      table,
      repositoryPath('tests/core/light-harness.c'),
      '-o',
      this.program,
    ])
  }

  /** Lines the harness prints for lines of input. */
  run(script: string[]): string[] {
    const out = execFileSync(this.program, {
      encoding: 'utf8',
      input: `${script.join('\n')}\n`,
      maxBuffer: 1 << 28,
      env: { ...process.env, ASAN_OPTIONS: 'detect_leaks=0' },
    })
    return out.split('\n').filter((line) => line !== '')
  }

  dispose(): void {
    rmSync(this.folder, { recursive: true, force: true })
  }
}
