import encodeQR from 'qr'
import { fail, ok, type Result } from '../model/result'
import { CODE_TROUBLE } from '../words/en/code-trouble'

/** Rows of a QR code with its light margin; true is dark. */
export type CodeModules = boolean[][]

/** Light modules that must surround a code (ISO/IEC 18004, 6.3.8). */
export const QUIET_MODULES = 4

/**
 * A QR code with error correction L (7 %): on a screen nothing is scratched off, and fewer modules
 * are read from farther away. Code: 'qr/too-long', beyond version 40.
 */
export function drawCode(text: string): Result<CodeModules> {
  const encoding = /^[0-9A-Z $%*+\-./:]*$/.test(text) ? 'alphanumeric' : 'byte'
  try {
    return ok(encodeQR(text, 'raw', { ecc: 'low', encoding, border: QUIET_MODULES }))
  } catch {
    return fail('qr/too-long', CODE_TROUBLE.tooLong(text.length))
  }
}

/** The dark modules as an SVG path, one unit a module. */
export function codePath(modules: CodeModules): string {
  const runs: string[] = []
  modules.forEach((row, y) => {
    for (let x = 0; x < row.length; x++) {
      if (row[x] !== true) continue
      let end = x
      while (row[end] === true) end++
      runs.push(`M${x} ${y}h${end - x}v1h${x - end}z`)
      x = end
    }
  })
  return runs.join('')
}
