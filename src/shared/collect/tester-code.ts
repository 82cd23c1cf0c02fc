import { fail, ok, type Result } from '../model/result'
import { SESSION_FILE } from '../words/en/session-file'

/** Crockford's base 32: no I, L, O, U, so that nothing is misread and no word comes about by accident. */
const SYMBOLS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'
const RANDOM_SYMBOLS = 6

/** Random bytes that a new code is made of. */
export const CODE_BYTES = RANDOM_SYMBOLS

/**
 * A tester's code: six random symbols (30 bits) and a check symbol, such as 'K7Q4MXA'. Codes are
 * drawn on phones that know nothing of each other; `testerKey` tells apart the two that meet once
 * in many thousand sessions.
 * @param random `CODE_BYTES` random bytes
 */
export function newTesterCode(random: Uint8Array): string {
  const symbols = Array.from(random.subarray(0, RANDOM_SYMBOLS), (byte) => byte % 32)
  return [...symbols, checkOf(symbols)].map((value) => SYMBOLS[value]).join('')
}

/**
 * Reads a code that a person wrote down: case, spaces and hyphens do not count, O is 0, I and L are 1.
 * @returns failure 'tester/code' when it is none, or a symbol is wrong
 */
export function readTesterCode(text: string): Result<string> {
  const code = text.toUpperCase().replace(/[\s-]/g, '').replace(/O/g, '0').replace(/[IL]/g, '1')
  const values = [...code].map((symbol) => SYMBOLS.indexOf(symbol))
  const isWhole = values.length === RANDOM_SYMBOLS + 1 && !values.includes(-1)
  if (isWhole && checkOf(values.slice(0, -1)) === values.at(-1)) return ok(code)
  return fail('tester/code', SESSION_FILE.noCode(text))
}

/** Odd weights up to 11 differ by even numbers: one wrong symbol never passes, nor most swaps. */
function checkOf(values: readonly number[]): number {
  return values.reduce((sum, value, i) => sum + value * (2 * i + 1), 0) % 32
}
