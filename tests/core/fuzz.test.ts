import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { repositoryPath } from '../../src/build/paths'
import { describeWithTools } from '../support/tools'

/** Inputs that reached new code under the fuzzer; tests/vectors/README.md says how they were found. */
const corpus = readFileSync(repositoryPath('tests/vectors/fuzz-corpus.bin'))

/** Inputs in a pack. */
function countOf(pack: Buffer): number {
  let count = 0
  for (let at = 0; at < pack.length; at += 2 + pack.readUInt16LE(at)) count++
  return count
}

for (const compiler of ['gcc', 'clang'] as const) {
  describeWithTools(`what a fuzzer found, by ${compiler} under sanitizers`, [compiler], () => {
    const folder = mkdtempSync(join(tmpdir(), 'movewright-fuzz-'))
    const program = join(folder, 'fuzz')

    beforeAll(() => {
      const core = repositoryPath('src/core')
      const sources = readdirSync(core).filter((name) => /^mvw_.*\.c$/.test(name))
      execFileSync(compiler, [
        ...['-std=c99', '-Wall', '-Wextra', '-Wpedantic', '-Werror', '-O1', '-g', '-DFROM_PACK'],
        ...['-fsanitize=address,undefined', '-fno-sanitize-recover=all', `-I${core}`],
        ...[...sources.map((name) => join(core, name)), repositoryPath('tests/core/fuzz.c')],
        ...['-o', program],
      ])
    })
    afterAll(() => rmSync(folder, { recursive: true, force: true }))

    test('no input makes the core crash, write beyond a buffer or compute something undefined', () => {
      const printed = execFileSync(program, { input: corpus, encoding: 'utf8' })
      expect(printed).toBe(`${countOf(corpus)} inputs\n`)
      expect(countOf(corpus)).toBeGreaterThan(50)
    })
  })
}
