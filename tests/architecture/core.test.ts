import { describe, expect, it } from 'vitest'
import { filesBelow, type SourceFile } from './source-files'

/** The files that are exported to boards; port/ and examples are for hosts. */
const core = filesBelow('src/core', ['.c', '.h']).filter(({ path }) =>
  /^src\/core\/\w+\.[ch]$/.test(path),
)

describe('the core runs on the smallest board', () => {
  it('is there', () => {
    expect(core.map(({ path }) => path)).toContain('src/core/movewright.h')
  })

  it('includes its own headers and those that every C99 compiler brings without a library', () => {
    const allowed = /^(<stdint\.h>|<stddef\.h>|<avr\/pgmspace\.h>|"(movewright|mvw_\w+)\.h")$/
    const others = core.flatMap(({ path, text }) =>
      [...text.matchAll(/^\s*#\s*include\s+(\S+)/gm)]
        .map(([, header = '']) => header)
        .filter((header) => !allowed.test(header))
        .map((header) => `${path} includes ${header}, which a board may lack`),
    )
    expect(others).toEqual([])
  })

  it('has no heap and no floating point', () => {
    expect(wordsIn(core, /\b(malloc|calloc|realloc|free|alloca|float|double)\b/g)).toEqual([])
  })

  it('has no state of its own: the caller owns all memory', () => {
    const globals =
      /^(?:static\s+)?(?!.*\bconst\b)(?:u?int\d+_t|mvw_\w+)\s+\*?\w+(?:\[[^\]]*\])*\s*(?:=[^;]*)?;/gm
    const found = core
      .filter(({ path }) => path.endsWith('.c'))
      .flatMap(({ path, text }) =>
        [...withoutComments(text).matchAll(globals)].map(([line]) => `${path}: ${line}`),
      )
    expect(found).toEqual([])
  })
})

function wordsIn(files: SourceFile[], pattern: RegExp): string[] {
  return files.flatMap(({ path, text }) =>
    [...withoutComments(text).matchAll(pattern)].map(([word]) => `${path} uses ${word}`),
  )
}

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\/\/.*$/gm, '')
}
