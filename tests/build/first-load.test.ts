import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { FIRST_LOAD_BUDGET_BYTES, firstLoadFiles, gzipBytes } from '../../src/build/first-load'
import { DIST } from '../../src/build/paths'

describe('what a page loads at first', () => {
  let folder: string
  const put = (path: string, text: string) => writeFileSync(join(folder, path), text)

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'movewright-first-load-'))
    mkdirSync(join(folder, 'assets'))
    put(
      'index.html',
      '<link rel="icon" href="./icon.svg"><script type="module" crossorigin src="./assets/main.js"></script><link rel="stylesheet" href="./assets/main.css">',
    )
    put('assets/main.css', 'p{}')
    put(
      'assets/main.js',
      'import{a as b}from"./near.js";import"./side.js";const c=()=>import("./far.js")',
    )
    put('assets/near.js', 'import{d}from"./deep.js";export{d}')
    put('assets/side.js', 'export*from"./deep.js"')
    put('assets/deep.js', 'export const d=1')
    put('assets/far.js', 'import"./farther.js"')
    put('assets/farther.js', '')
  })
  afterAll(() => rmSync(folder, { recursive: true }))

  it('is the page, its scripts and styles and what those import at once, each counted once', () => {
    expect(firstLoadFiles(folder).sort()).toEqual([
      'assets/deep.js',
      'assets/main.css',
      'assets/main.js',
      'assets/near.js',
      'assets/side.js',
      'index.html',
    ])
  })

  it('grows past any budget when a script that does not compress comes in', () => {
    const before = gzipBytes(folder, firstLoadFiles(folder))
    const noise = Array.from({ length: 40_000 }, (_, n) => Math.sin(n).toString(36)).join('')
    put('assets/deep.js', `export const d="${noise}"`)
    expect(gzipBytes(folder, firstLoadFiles(folder)) - before).toBeGreaterThan(
      FIRST_LOAD_BUDGET_BYTES,
    )
  })
})

describe('the first load of the built app', () => {
  it('keeps its budget', () => {
    if (!existsSync(join(DIST, 'index.html'))) throw new Error('Not built. Run: npm run build')
    const files = firstLoadFiles(DIST)
    expect(files.some((file) => file.endsWith('.js'))).toBe(true)
    expect(files.some((file) => file.endsWith('.css'))).toBe(true)
    expect(gzipBytes(DIST, files)).toBeLessThanOrEqual(FIRST_LOAD_BUDGET_BYTES)
  })
})
