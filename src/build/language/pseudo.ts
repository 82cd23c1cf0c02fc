import { codeStrings } from './code-strings'

const PLAIN = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ'
const ACCENTED = 'áƀçðéƒĝĥíĵķļḿñóþǫřšŧúṽŵẋýžÁƁÇÐÉƑĜĤÍĴĶĻḾÑÓÞǪŘŠŦÚṼŴẊÝŽ'
const ACCENTS = new Map([...PLAIN].map((letter, at) => [letter, [...ACCENTED][at] ?? letter]))

/** Tags, entities, escapes of the source, and units after a figure or by themselves. */
const UNTOUCHED =
  /<[^>]*>|&\w+;|\\(?:u\{[^}]*\}|u[\da-fA-F]{4}|x[\da-fA-F]{2}|.)|(?<![\p{L}'’])(?:[µmnkMG]?(?:Hz|Ω|[smVAgBW])|mAh|[KMG]iB|kB|m?deg\/s|rad\/s|m\/s²)(?![\p{L}'’])/gu

/**
 * A text as a language would have it that nobody speaks: every letter with an accent, every
 * vowel twice, which makes English about a third longer. Units and markup stay. What is still plain
 * on a screen did not come from the words.
 */
export function pseudoText(text: string): string {
  let done = ''
  let from = 0
  for (const match of text.matchAll(UNTOUCHED)) {
    done += accented(text.slice(from, match.index)) + match[0]
    from = match.index + match[0].length
  }
  return done + accented(text.slice(from))
}

function accented(text: string): string {
  return text
    .replace(/[aeiou]/g, '$&$&')
    .replace(/[A-Za-z]/g, (letter) => ACCENTS.get(letter) ?? letter)
}

/** What is read by the program and not by people, even where words stand: names, and what is one. */
const CODES = /^(kind|code|id|key|tone|icon|href|locale|tag)$/
const CODE = /^[a-z][a-z\d]*([-/][a-z\d]+)*$/

/** A file of words with every text in it as `pseudoText` has it. */
export function pseudoSource(file: string, code: string): string {
  const pieces = codeStrings(file, code)
    .filter(({ of, text }) => of === null || !CODES.test(of) || !CODE.test(text))
    .flatMap((one) => one.pieces)
    .sort((a, b) => b.start - a.start)
  let done = code
  for (const { start, end } of pieces) {
    done = done.slice(0, start) + pseudoText(done.slice(start, end)) + done.slice(end)
  }
  return done
}
