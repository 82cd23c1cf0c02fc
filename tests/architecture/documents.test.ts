import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { repositoryPath } from '../../src/build/paths'
import { describeWithTools } from '../support/tools'
import { IMPORT_TABLE } from './import-table'

const read = (path: string) => readFileSync(repositoryPath(path), 'utf8')
const documents = ['README.md', 'DEVELOPERS.md']
const scripts = Object.keys(JSON.parse(read('package.json')).scripts)

describe.each(documents)('%s', (document) => {
  const text = read(document)

  it('names only files and folders that exist', () => {
    const named = [...text.matchAll(/`((?:src|workers|tests|public|\.ci)(?:\/[\w.-]+)*)`?/g)]
    const linked = [...text.matchAll(/\]\(([^):]+)\)/g)]
    const paths = [...named, ...linked].map(([, path = '']) => path)
    expect(paths.length).toBeGreaterThan(0)
    expect(paths.filter((path) => !existsSync(repositoryPath(path)))).toEqual([])
  })

  it('names only commands that package.json has', () => {
    const named = [...text.matchAll(/npm (?:run ([\w-]+)|(start|test)\b)/g)]
    const missing = named
      .map(([, run, short]) => run ?? short ?? '')
      .filter((name) => !scripts.includes(name))
    expect(missing).toEqual([])
  })

  it('stays in the lines that a reader of plain text sees', () => {
    const long = text.split('\n').filter((line) => line.length > 112 && !/^[|!]/.test(line))
    expect(long).toEqual([])
  })
})

describe('what the documents say agrees with the sources', () => {
  it('limits in README.md are those of the core', () => {
    const header = read('src/core/mvw_model.h')
    const rows = [...read('README.md').matchAll(/\| ([\d,]+) \(`(MVW_MAX_\w+)`\)/g)]
    expect(rows.map(([, , name]) => name).sort()).toEqual(
      [...header.matchAll(/#define (MVW_MAX_\w+)/g)].map(([, name]) => name).sort(),
    )
    for (const [, value, name] of rows) {
      expect(header).toMatch(new RegExp(`#define ${name} ${value}\\b`))
    }
  })

  it('every area of the import table is in the tree and the table of DEVELOPERS.md', () => {
    const text = read('DEVELOPERS.md')
    const rows = text.split('\n').filter((line) => line.startsWith('| `'))
    for (const { area } of IMPORT_TABLE) {
      expect(
        rows.some((row) => row.startsWith(`| \`${area}\``)),
        `${area} in DEVELOPERS.md`,
      ).toBe(true)
    }
  })

  it('the picture in README.md is small enough for a page on a phone', () => {
    const [, path = ''] = read('README.md').match(/!\[[^\]]+\]\(([^)]+)\)/) ?? []
    expect(statSync(repositoryPath(path)).size).toBeLessThan(200_000)
  })
})

describeWithTools('RAM in README.md', ['arm-none-eabi-gcc'], () => {
  it('starts from the size of the state on a 32-bit board', () => {
    const [, bytes] = read('README.md').match(/`(\d+) \+ 12 × \(max_length/) ?? []
    const folder = mkdtempSync(join(tmpdir(), 'movewright-size-'))
    const claim = `#include "movewright.h"\nchar as_claimed[sizeof(mvw_state) == ${bytes} ? 1 : -1];\n`
    const compile = [
      '-mcpu=cortex-m0',
      '-std=c99',
      '-I',
      repositoryPath('src/core'),
      '-x',
      'c',
      '-c',
    ]
    try {
      execFileSync('arm-none-eabi-gcc', [...compile, '-', '-o', join(folder, 'size.o')], {
        input: claim,
        stdio: ['pipe', 'ignore', 'pipe'],
      })
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})
