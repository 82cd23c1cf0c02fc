import decodeQR from 'qr/decode.js'

export interface Picture {
  width: number
  height: number
  /** RGBA, 8 bits each. */
  data: Uint8ClampedArray
}

/** Looking for a code that is not there must not hold up the page, ms. */
const TIME_LIMIT_MS = 60

/** Text of a QR code in a picture; null when none can be read. */
export function readCode(picture: Picture): string | null {
  try {
    return decodeQR(picture, { format: 'RGBA', effort: 2, timeLimit: TIME_LIMIT_MS })
  } catch {
    // The decoder tells "none found" and "damaged" by throwing; the next picture may be better.
    return null
  }
}
