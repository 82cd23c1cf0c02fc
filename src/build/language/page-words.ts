import { existsSync, readFileSync } from 'node:fs'
import type { Plugin } from 'vite'
import { PAGE } from '../../shared/words/en/page'
import { repositoryPath } from '../paths'
import { pseudoText } from './pseudo'
import { languageTag, PSEUDO } from './words'

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
          .replace('<html lang="en">', `<html lang="${languageTag(language)}">`)
          .replace(/\{\{(\w+)\}\}/g, (mark, name: string) => texts[name] ?? mark)
      },
    },
    async generateBundle() {
      const manifest = JSON.parse(readFileSync(repositoryPath(`public/${MANIFEST}`), 'utf8'))
      const { manifestDescription: description } = await textsOf(language)
      const written = { ...manifest, lang: languageTag(language), description }
      const source = `${JSON.stringify(written, null, 2)}\n`
      this.emitFile({ type: 'asset', fileName: MANIFEST, source })
    },
  }
}

async function textsOf(language: string): Promise<Record<string, string>> {
  if (language === PSEUDO) {
    return Object.fromEntries(Object.entries(PAGE).map(([name, text]) => [name, pseudoText(text)]))
  }
  const translated = repositoryPath(`src/shared/words/${language}/page.ts`)
  const { PAGE: own }: { PAGE: typeof PAGE } = existsSync(translated)
    ? await import(translated)
    : { PAGE }
  return own
}
