import { execFile } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { repositoryPath } from '../../src/build/paths'
import { writeLibraryFile } from '../../src/shared/format/library-file'
import type { Evaluation } from '../../src/shared/model/evaluation'
import { tinyLibrary } from '../shared/training/tiny-library'

const folder = mkdtempSync(join(tmpdir(), 'movewright-report-'))
const file = writeLibraryFile(tinyLibrary())

beforeAll(() => writeFileSync(join(folder, 'tiny.zip'), file))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

interface Ended {
  code: number
  stdout: string
  stderr: string
}

function evaluate(...args: string[]): Promise<Ended> {
  const tsx = repositoryPath('node_modules/tsx/dist/cli.mjs')
  const command = [tsx, repositoryPath('src/build/evaluate.ts'), ...args]
  return new Promise((resolve) => {
    execFile(process.execPath, command, { maxBuffer: 1 << 26 }, (error, stdout, stderr) => {
      resolve({ code: error === null ? 0 : Number(error.code), stdout, stderr })
    })
  })
}

describe('npm run evaluate -- PATH --report FILE', () => {
  it('writes a page with the figures it prints, and the sum of the library file', async () => {
    const out = join(folder, 'report.html')
    const zip = join(folder, 'tiny.zip')
    const { code, stdout } = await evaluate(zip, '--matcher', 'template', '--json', '--report', out)
    expect(code).toBe(0)
    const { accuracy, scores } = JSON.parse(stdout) as Evaluation
    const page = readFileSync(out, 'utf8')
    expect(page).toContain(`${accuracy.hits}/${accuracy.n}`)
    for (const { name, recall, precision } of scores) {
      const row = page
        .split('\n')
        .find((line) => line.includes(`<bdi>${name}</bdi></th>`) && /%/.test(line))
      expect(row).toContain(`${recall.hits}/${recall.n}`)
      expect(row).toContain(`${precision.hits}/${precision.n}`)
    }
    expect(page).toContain(createHash('sha256').update(file).digest('hex'))
    expect(page).toContain('Grip tolerance was not measured.')
  }, 60_000)

  it('refuses to measure the grip for a report that is not asked for', async () => {
    const { code, stderr } = await evaluate(join(folder, 'tiny.zip'), '--grip')
    expect(code).toBe(1)
    expect(stderr).toContain('give --report FILE.html with it')
  }, 30_000)
})
