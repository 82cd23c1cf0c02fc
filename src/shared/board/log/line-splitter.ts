/** A line longer than this is no reading: a sensor's row has some 70 characters. */
export const MAX_LINE = 1000

/**
 * Cuts text that comes in pieces into lines. Line ends are LF, CR LF or CR, also when a piece ends
 * between CR and LF. Noise without line ends is dropped in stretches of MAX_LINE, so that it cannot
 * fill the memory.
 */
export class LineSplitter {
  #rest = ''
  #afterReturn = false
  /** Lines given so far. */
  count = 0

  push(text: string): string[] {
    let piece = text
    if (this.#afterReturn && piece.startsWith('\n')) piece = piece.slice(1)
    if (text !== '') this.#afterReturn = piece.endsWith('\r')
    const lines = (this.#rest + piece).split(/\r\n|\n|\r/)
    this.#rest = lines.pop() ?? ''
    if (this.#rest.length > MAX_LINE) {
      lines.push(this.#rest)
      this.#rest = ''
    }
    this.count += lines.length
    return lines
  }

  /** What stands behind the last line end: a line that was cut off, or the last one of a file. */
  flush(): string {
    const rest = this.#rest
    this.#rest = ''
    this.#afterReturn = false
    return rest
  }
}
