/**
 * A text's bytes in UTF-8; halves of a pair that stand alone become U+FFFD. For what the first load
 * needs: a package that does it brings its packer along.
 */
export function utf8(text: string): Uint8Array {
  const whole = text.replace(/\p{Surrogate}/gu, '\ufffd')
  const bytes = encodeURIComponent(whole).match(/%[\dA-F]{2}|./g) ?? []
  return Uint8Array.from(bytes, (one) =>
    one.length === 1 ? one.charCodeAt(0) : Number.parseInt(one.slice(1), 16),
  )
}
