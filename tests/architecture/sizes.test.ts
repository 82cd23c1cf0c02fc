import { describe, expect, it } from 'vitest'
import { filesBelow, type SourceFile, typescriptOf } from './source-files'

const TYPESCRIPT_LINES = 400
const C_LINES = 350
const C_FUNCTION_LINES = 80

describe('files stay small enough to say one thing', () => {
  it(`TypeScript has at most ${TYPESCRIPT_LINES} lines a file`, () => {
    expect(tooLong(typescriptOf('src', 'workers', 'tests'), TYPESCRIPT_LINES)).toEqual([])
  })

  it(`C has at most ${C_LINES} lines a file`, () => {
    expect(tooLong(filesBelow('src/core', ['.c', '.h']), C_LINES)).toEqual([])
  })

  it(`C has at most ${C_FUNCTION_LINES} lines a function; Biome holds 60 for TypeScript`, () => {
    const long = filesBelow('src/core', ['.c']).flatMap(({ path, text }) =>
      functionsOf(text)
        .filter((lines) => lines.length > C_FUNCTION_LINES)
        .map((lines) => `${path}: ${lines[0]} has ${lines.length} lines`),
    )
    expect(long).toEqual([])
  })
})

/** Functions of a C file in the formatter's layout: the body ends with a brace in column one. */
function functionsOf(text: string): string[][] {
  return [...text.matchAll(/^[A-Za-z].*\([^;]*?\) \{\n[\s\S]*?^\}/gm)].map(([found]) =>
    found.split('\n'),
  )
}

function tooLong(files: SourceFile[], limit: number): string[] {
  return files
    .map(({ path, text }) => ({ path, lines: text.split('\n').length - 1 }))
    .filter(({ lines }) => lines > limit)
    .map(({ path, lines }) => `${path} has ${lines} lines: split it by what it says`)
}
