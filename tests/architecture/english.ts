import { type CodeString, codeStrings } from '../../src/build/language/code-strings'
import type { SourceFile } from './source-files'

export interface English {
  path: string
  line: number
  text: string
}

/** Attributes and properties that people read, whatever stands in them. */
const READ =
  /^(title|label|aria-label|aria-description|aria-valuetext|alt|placeholder|text|hint|legend|caption|action|note|message|sentence|headline|heading|children)$/
/** Attributes and properties that only the program reads. */
const UNREAD = /^(class|\w+Class|style|key|d|viewBox|transform|accept|font)$/

/** Symbols, not words: the same in every language. */
const UNITS =
  /(?<![\p{L}])(?:[µmnkMG]?(?:Hz|Ω|F|[smVAgBWJhn])|mAh|Wh|[KMG]iB|kB|m?deg\/s|rad\/s|m\/s²|lsb|LSB|px|ax|ay|az|gx|gy|gz|[xyz])(?![\p{L}])/gu

/** Names of keys, events and errors of the platform. */
const PLATFORM =
  /^(Escape|Enter|Tab|Home|End|Space|Page\w+|Arrow\w+|\w*Error|\w+-\w+\/.*|application\/.*)$/

/** Strings of a file that a person might read. */
export function englishIn({ path, text }: SourceFile): English[] {
  return codeStrings(path, text)
    .filter(isEnglish)
    .map((one) => ({ path, line: one.line, text: one.text.trim().replace(/\s+/g, ' ') }))
}

function isEnglish({ kind, text, of }: CodeString): boolean {
  const words = text.replace(UNITS, ' ').trim()
  if (!/\p{L}/u.test(words)) return false
  if (kind === 'text') return true
  if (of !== null && UNREAD.test(of)) return false
  if (of !== null && READ.test(of)) return true
  return hasTwoWords(words) || isCapitalWord(words)
}

/** Words parted by a blank or a comma; lists of classes and paths of a drawing are none. */
function hasTwoWords(text: string): boolean {
  return /(^|[\s(])[\p{L}’']{2,}[,.;:)]* +(\p{L}|0)|0[,.;:)]* +\p{L}{2,}/u.test(text)
}

function isCapitalWord(text: string): boolean {
  return /^\p{Lu}\p{Ll}+[.:…]?$/u.test(text) && !PLATFORM.test(text)
}
