import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { build } from 'vite'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { chosenLanguage, words } from '../../../src/build/language/words'

describe('words of another language', () => {
  let folder: string
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'movewright-words-'))
    write('words/en/record.ts', "export const RECORD = { stop: 'Stop' }")
    write('words/en/prove.ts', "import { n } from './numbers'\nexport const PROVE = n('Measure')")
    write('words/en/numbers.ts', 'export const n = (text: string) => "en " + text')
    write('words/de/record.ts', "export const RECORD = { stop: 'Anhalten' }")
    write('words/de/numbers.ts', 'export const n = (text: string) => "de " + text')
    write(
      'view.ts',
      "import { RECORD } from './words/en/record'\nimport { PROVE } from './words/en/prove'\nconsole.log(RECORD.stop, PROVE)",
    )
  })
  afterEach(() => rmSync(folder, { recursive: true, force: true }))

  function write(path: string, text: string): void {
    const file = join(folder, path)
    mkdirSync(dirname(file), { recursive: true })
    writeFileSync(file, text)
  }

  async function built(language: string): Promise<{ code: string; warnings: string[] }> {
    const warnings: string[] = []
    const out = await build({
      configFile: false,
      root: folder,
      logLevel: 'silent',
      plugins: [words(language, join(folder, 'words'))],
      build: {
        write: false,
        minify: false,
        rolldownOptions: {
          input: join(folder, 'view.ts'),
          onLog: (_level, log) => warnings.push(log.message),
        },
      },
    })
    const [first] = [out].flat()
    if (first === undefined || !('output' in first)) throw new Error('Nothing was built.')
    return { code: first.output[0].code, warnings }
  }

  it('stand in the built app, in place of the English that views import', async () => {
    const { code } = await built('de')
    expect(code).toContain('Anhalten')
    expect(code).not.toContain('"Stop"')
  })

  it('are taken in English where a file is missing, with what is translated below it', async () => {
    const { code, warnings } = await built('de')
    expect(code).toContain('Measure')
    expect(code).toMatch(/de .*text/)
    expect(warnings.join('\n')).toContain('Not translated to de, taken in English: prove.ts')
  })

  it('are English when no other language is asked for, and accented in the pseudo-language', async () => {
    expect((await built('en')).code).toContain('Stop')
    expect((await built('pseudo')).code).toContain('Šŧóóþ')
  })

  it('may add to the English of the same file', async () => {
    write(
      'words/de/record.ts',
      "import { RECORD as english } from '../en/record'\nexport const RECORD = { ...english, go: 'Los' }",
    )
    expect((await built('de')).code).toMatch(/Stop[\s\S]*Los/)
  })

  it('are refused in one sentence when there is no folder of them', () => {
    expect(() => chosenLanguage('fr', join(folder, 'words'))).toThrow(
      /^MOVEWRIGHT_LANGUAGE is "fr", and src\/shared\/words has no folder of that name: /,
    )
    expect(() => chosenLanguage('../en', join(folder, 'words'))).toThrow(/no folder of that name/)
    expect(chosenLanguage('de', join(folder, 'words'))).toBe('de')
    expect(chosenLanguage('', join(folder, 'words'))).toBe('en')
  })
})
