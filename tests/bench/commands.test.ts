import { execFile } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { decisionText } from '../../src/build/decisions'
import { repositoryPath } from '../../src/build/paths'
import { writeLibraryFile } from '../../src/shared/format/library-file'
import { writeSamplesCsv } from '../../src/shared/format/samples-csv'
import type { Evaluation } from '../../src/shared/model/evaluation'
import { tinyLibrary } from '../shared/training/tiny-library'

let folder: string

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'takes-'))
  const full = tinyLibrary()
  for (const [index, { recording, samples }] of full.recordings.entries()) {
    if (recording.kind !== 'take') continue
    mkdirSync(join(folder, 'takes', recording.gestureId), { recursive: true })
    const path = join(folder, 'takes', recording.gestureId, `${recording.testerCode}_${index}.csv`)
    writeFileSync(path, writeSamplesCsv(samples))
  }
  writeFileSync(join(folder, 'tiny.zip'), writeLibraryFile(full))
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

interface Ended {
  code: number
  stdout: string
  stderr: string
}

function run(script: string, ...args: string[]): Promise<Ended> {
  const command = [repositoryPath('node_modules/tsx/dist/cli.mjs'), repositoryPath(script), ...args]
  return new Promise((resolve) => {
    execFile(process.execPath, command, { maxBuffer: 1 << 26 }, (error, stdout, stderr) => {
      resolve({ code: error === null ? 0 : Number(error.code), stdout, stderr })
    })
  })
}

const evaluate = (...args: string[]) => run('src/build/evaluate.ts', ...args)

describe('npm run evaluate', () => {
  it('gives the same for a folder of CSV takes and for the library file of the same takes', async () => {
    const [fromFolder, fromFile] = await Promise.all([
      evaluate(join(folder, 'takes'), '--json'),
      evaluate(join(folder, 'tiny.zip'), '--json'),
    ])
    const [a, b] = [fromFolder, fromFile].map(({ stdout }) => JSON.parse(stdout) as Evaluation)
    expect(a?.holdout).toBe('tester')
    expect(a?.accuracy.n).toBe(36)
    expect(a?.accuracy.value).toBeGreaterThan(0.85)
    expect(b?.accuracy).toEqual(a?.accuracy)
  })

  it('prints a table with n and interval for every rate', async () => {
    const { stdout, code } = await evaluate(join(folder, 'tiny.zip'), '--holdout', 'take')
    expect(code).toBe(0)
    expect(stdout).toContain('a tester may be in both training and test')
    expect(stdout).toMatch(/right +\d+\.\d % of 36 \(\d+\.\d to \d+\.\d\)/)
    expect(stdout).toMatch(/Nod +\d+\.\d % of 12 \(/)
  })

  it('decides which gestures, how much data and which sensor, as JSON and as sentences', async () => {
    const path = join(folder, 'two-testers.zip')
    writeFileSync(path, writeLibraryFile(tinyLibrary({ testers: 2, takesEach: 3 })))
    const { stdout } = await evaluate(path, '--decide', '--tolerance', '5', '--json')
    const { decisions } = JSON.parse(stdout)
    expect(decisions.gestures.pairs).toHaveLength(3)
    expect(decisions.data.errors).toHaveLength(3)
    expect(decisions.sensor.tolerance).toBe(0.05)
    expect(decisions.sensor.own.loss.n).toBe(18)
    const text = decisionText(decisions)
    for (const title of ['Which gestures', 'How much data', 'Which sensor is enough'])
      expect(text).toContain(title)
    expect(text).toContain('a third shows what further testers are worth')
  }, 240_000)

  it('measures a library against other settings on the same takes', async () => {
    const { stdout, code } = await evaluate(
      ...[
        join(folder, 'tiny.zip'),
        '--matcher',
        'template',
        '--against-with',
        'length=8',
        '--json',
      ],
    )
    expect(code).toBe(0)
    const { accuracy, against } = JSON.parse(stdout)
    expect(against.comparison.first).toEqual(accuracy)
    expect(against.comparison.second).toEqual(against.evaluation.accuracy)
    const { onlyFirst, onlySecond, flips } = against.comparison
    expect(flips).toHaveLength(onlyFirst + onlySecond)
    expect(against.changes).toEqual([expect.stringMatching(/^points \d+ → 8$/)])
    expect(against.words.evidence).toContain('36 takes held out in both')
  })

  it('says what a gesture costs the others when it is taught on the prop', async () => {
    const zip = join(folder, 'tiny.zip')
    const { stdout, code } = await evaluate(
      zip,
      '--matcher',
      'template',
      '--teach',
      'Nod',
      '--json',
    )
    expect(code).toBe(0)
    const { gesture, cost, words } = JSON.parse(stdout).teach
    expect(gesture).toBe('Nod')
    expect(cost.before.n).toBe(24)
    expect(cost.place).toBeNull()
    expect(words.seen).not.toBe('')
    expect((await evaluate(zip, '--teach', 'Juggle')).stderr).toContain('--teach takes the name')
  })

  it.each([
    ['there is nothing', ['/nowhere/at/all'], 'There is nothing at /nowhere/at/all'],
    ['the holdout is unknown', ['x', '--holdout', 'day'], '--holdout is tester or take, not day.'],
    ['an option is unknown', ['x', '--loud'], "Unknown option '--loud'"],
    ['the tolerance is none', ['x', '--tolerance', '0'], '--tolerance is points from above 0'],
    ['a setting is unknown', ['x', '--with', 'speed=1'], '"speed=1" is no setting'],
    ['a setting is out of its range', ['x', '--with', 'length=4'], 'a number from 8 to 128'],
  ])('ends with one clear sentence when %s', async (_, args, sentence) => {
    const { code, stderr, stdout } = await evaluate(...args)
    expect(code).toBe(1)
    expect(stderr).toContain(sentence)
    expect(stdout).toBe('')
  })
})

describe('npm run bench', () => {
  it('prints one JSON object a line', async () => {
    const { stdout, code } = await run('src/build/bench.ts', 'size')
    expect(code).toBe(0)
    const figures = stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line))
    expect(figures.map(({ figure }) => figure)).toContain('core_wasm_bytes')
    expect(figures.map(({ figure }) => figure)).toContain('first_load_bytes')
    for (const { value, unit } of figures) {
      expect(value).toBeGreaterThan(0)
      expect(unit).not.toBe('')
    }
  })

  it('names its benches when asked for none', async () => {
    const { stderr, code } = await run('src/build/bench.ts')
    expect(code).toBe(1)
    expect(stderr).toContain('accuracy|speed|size')
  })
})
