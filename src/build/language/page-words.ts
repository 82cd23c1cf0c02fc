import { existsSync, readFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import type { Plugin } from 'vite'
import { repositoryPath } from '../paths'
import { pseudoText } from './pseudo'
import { ENGLISH, PSEUDO } from './words'

const MANIFEST = 'manifest.webmanifest'

/** Puts language and words into the page, at {{name}}, and into the manifest. */
export function pageWords(language: string): Plugin {
  return {
    name: 'page-words',
    transformIndexHtml: {
      order: 'pre',
      handler: async (html) => {
        const texts = await textsOf(language)
        return html
          .replace('<html lang="en">', `<html lang="${await tagOf(language)}">`)
          .replace(/\{\{(\w+)\}\}/g, (mark, name: string) => texts[name] ?? mark)
      },
    },
    async generateBundle() {
      const manifest = JSON.parse(readFileSync(repositoryPath(`public/${MANIFEST}`), 'utf8'))
      const { manifestDescription: description } = await textsOf(language)
      const written = { ...manifest, lang: await tagOf(language), description }
      const source = `${JSON.stringify(written, null, 2)}\n`
      this.emitFile({ type: 'asset', fileName: MANIFEST, source })
    },
  }
}

async function textsOf(language: string): Promise<Record<string, string>> {
  const { PAGE } = await wordsOf<typeof import('../../shared/words/en/page')>(language, 'page')
  if (language !== PSEUDO) return PAGE
  return Object.fromEntries(Object.entries(PAGE).map(([name, text]) => [name, pseudoText(text)]))
}

/** What the page says it is written in; for the pseudo-language the tag of the CLDR's. */
async function tagOf(language: string): Promise<string> {
  type Words = typeof import('../../shared/words/en/language')
  return language === PSEUDO ? 'en-XA' : (await wordsOf<Words>(language, 'language')).LANGUAGE.tag
}

/** A file of words, the English one where it is not translated. */
async function wordsOf<Words>(language: string, name: string): Promise<Words> {
  const own = repositoryPath(`src/shared/words/${language}/${name}.ts`)
  const english = repositoryPath(`src/shared/words/${ENGLISH}/${name}.ts`)
  return import(pathToFileURL(existsSync(own) ? own : english).href)
}
