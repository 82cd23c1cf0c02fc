import { frameLength } from './frame'

/**
 * Time each code stands, ms. About half of all modules change from one code to the next; three changes
 * a second are at most one and a half pairs of opposing changes, half of what WCAG 2.2 (2.3.1, three
 * flashes or below) allows for any area, and bright and dark stay balanced.
 */
export const FRAME_MS = 350

export interface Density {
  name: 'fine' | 'medium' | 'coarse'
  blockBytes: number
}

/**
 * Bytes that fill a version of QR code with error correction L in alphanumeric mode (ISO/IEC 18004,
 * table 7): version 25 takes 1,853 characters, 17 takes 938, 10 takes 395. Finer codes are faster and
 * ask more of the camera.
 */
export const DENSITIES: readonly Density[] = [
  { name: 'fine', blockBytes: blockFor(1853) },
  { name: 'medium', blockBytes: blockFor(938) },
  { name: 'coarse', blockBytes: blockFor(395) },
]

/** Time to show all blocks once, ms. */
export function runMs(contentBytes: number, { blockBytes }: Density): number {
  return Math.ceil(contentBytes / blockBytes) * FRAME_MS
}

function blockFor(characters: number): number {
  let bytes = 1
  while (frameLength(bytes + 1) <= characters) bytes++
  return bytes
}
