/*
 * Characters that a text for people must not bring along: controls but tab and line breaks, and those
 * that turn the direction of writing for what follows (Unicode Standard Annex 9, explicit formatting
 * characters), by which a name could make the words around it read otherwise. The marks of direction
 * U+200E and U+200F stay: they are needed to write names.
 */
const STRANGE =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g

/** Escapes by which JSON can hold such characters; most files have none. */
const ESCAPED = /\\u(00[01789]|202|206)|\\[bf]/i

/** A negative nought, also as -0.0 or as what is too small for a double. JSON cannot write it again. */
const MAYBE_MINUS_NOUGHT = /-(0|\d[\d.]*[eE]-)/

/** A text without characters that no name or note needs. */
export function plainText(text: string): string {
  return text.replace(STRANGE, '')
}

/**
 * JSON from outside, its texts made plain and its negative noughts positive. Nested too deeply for the machine's stack, it throws like
 * any text that is no JSON.
 * @throws SyntaxError, or RangeError when nested too deeply
 */
export function parseJson(text: string): unknown {
  const plain = plainText(text)
  if (!ESCAPED.test(plain) && !MAYBE_MINUS_NOUGHT.test(plain)) return JSON.parse(plain)
  return JSON.parse(plain, (_key, value: unknown) => {
    if (typeof value === 'string') return plainText(value)
    return value === 0 ? 0 : value
  })
}
