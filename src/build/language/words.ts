import { existsSync } from 'node:fs'
import { dirname, relative, resolve, sep } from 'node:path'
import type { Plugin } from 'vite'
import { repositoryPath } from '../paths'
import { pseudoSource } from './pseudo'

/** The language that everything is written in, and that a missing file is taken from. */
export const ENGLISH = 'en'
/** Made of English by the build, to be tested with. */
export const PSEUDO = 'pseudo'

const WORDS = repositoryPath('src/shared/words')

/**
 * @param text what MOVEWRIGHT_LANGUAGE says; nothing stands for English
 * @param folder with a folder of words for each language
 * @throws Error with one sentence when there are no words of this language
 */
export function chosenLanguage(text: string, folder = WORDS): string {
  const language = text.trim() === '' ? ENGLISH : text.trim()
  const isName = /^[a-z]{2,8}(-[A-Za-z0-9]+)*$/.test(language)
  if (language === PSEUDO || (isName && existsSync(resolve(folder, language)))) return language
  throw new Error(
    `MOVEWRIGHT_LANGUAGE is "${language}", and src/shared/words has no folder of that name: put the translated files there, named as those in src/shared/words/en.`,
  )
}

/**
 * Takes every import of src/shared/words/en/X from the folder of the language instead. A file that
 * is not translated is taken in English, and the build says which. A translated file that imports
 * '../en/X' gets the English one, to add to it.
 */
export function words(language: string, folder = WORDS): Plugin {
  const english = resolve(folder, ENGLISH) + sep
  const own = resolve(folder, language) + sep
  const missing = new Set<string>()
  return {
    name: 'words',
    enforce: 'pre',
    resolveId(source, importer) {
      if (language === ENGLISH || language === PSEUDO) return null
      if (importer === undefined || !source.startsWith('.')) return null
      const from = importer.replace(/\?.*$/, '')
      const wanted = `${resolve(dirname(from), source)}.ts`
      const isOwn = wanted.startsWith(own)
      if (!isOwn && (from.startsWith(own) || !wanted.startsWith(english))) return null
      const name = relative(isOwn ? own : english, wanted)
      if (existsSync(own + name)) return own + name
      missing.add(name)
      return english + name
    },
    transform(code, id) {
      const file = id.replace(/\?.*$/, '')
      if (language !== PSEUDO || !file.startsWith(english)) return null
      return { code: pseudoSource(file, code), map: null }
    },
    buildEnd() {
      if (missing.size === 0) return
      this.warn(
        `Not translated to ${language}, taken in English: ${[...missing].sort().join(', ')}`,
      )
      missing.clear()
    },
  }
}
