/**
 * Text of people (names of gestures, libraries) made harmless for C99 with trigraphs and strict
 * warnings.
 */

/**
 * For inside a comment: cannot end it, open another, continue a line or form a trigraph. Backslashes
 * go first, as the strokes they become may end a comment.
 */
export function commentText(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')
    .replaceAll('\\', '/')
    .replaceAll('*/', '* /')
    .replaceAll('/*', '/ *')
    .replace(/\?(?=\?)/g, '? ')
}

/** A string literal holding the UTF-8 of text; what is not plain ASCII as octal escapes. */
export function stringLiteral(text: string, utf8: (text: string) => Uint8Array): string {
  const parts = [...utf8(text)].map((byte) => {
    const plain = byte >= 0x20 && byte < 0x7f && !'"\\?'.includes(String.fromCharCode(byte))
    return plain ? String.fromCharCode(byte) : `\\${byte.toString(8).padStart(3, '0')}`
  })
  return `"${parts.join('')}"`
}

/**
 * Names as the tails of macros or enumerators: upper-case ASCII, digits and '_', all different. A
 * name without any letter that C knows becomes its number.
 */
export function identifierTails(names: readonly string[]): string[] {
  const taken = new Set<string>()
  return names.map((name, index) => {
    const ascii = name
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .replace(/[^A-Za-z0-9]+/g, '_')
      .replace(/^_+|_+$/g, '')
      .toUpperCase()
      .slice(0, 40)
    let tail = ascii === '' ? String(index) : ascii
    // COUNT is the enumerator behind the last gesture.
    while (taken.has(tail) || tail === 'COUNT') tail = `${tail}_${index}`
    taken.add(tail)
    return tail
  })
}

/** Numbers in rows of an initialiser, up to 96 characters a line. */
export function numberRows(values: Iterable<number>, indent = '    '): string {
  const lines: string[] = []
  let line = indent
  for (const value of values) {
    const item = `${value},`
    if (line.length + item.length > 96) {
      lines.push(line.trimEnd())
      line = indent
    }
    line += `${item} `
  }
  lines.push(line.trimEnd())
  return lines.join('\n')
}
