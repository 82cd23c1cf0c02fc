import { describe, expect, it } from 'vitest'
import { filesBelow, type SourceFile, typescriptOf } from './source-files'

const TYPESCRIPT_LINES = 400
const C_LINES = 350

describe('files stay small enough to say one thing', () => {
  it(`TypeScript has at most ${TYPESCRIPT_LINES} lines a file`, () => {
    expect(tooLong(typescriptOf('src', 'workers', 'tests'), TYPESCRIPT_LINES)).toEqual([])
  })

  it(`C has at most ${C_LINES} lines a file`, () => {
    expect(tooLong(filesBelow('src/core', ['.c', '.h']), C_LINES)).toEqual([])
  })
})

function tooLong(files: SourceFile[], limit: number): string[] {
  return files
    .map(({ path, text }) => ({ path, lines: text.split('\n').length - 1 }))
    .filter(({ lines }) => lines > limit)
    .map(({ path, lines }) => `${path} has ${lines} lines: split it by what it says`)
}
