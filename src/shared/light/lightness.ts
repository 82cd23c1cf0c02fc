/** Lightness of the player (0 to 255) as L* in whole steps, and back. */
export function lightnessOf(level: number): number {
  return Math.round((level * 100) / 255)
}

export function levelOf(lightness: number): number {
  return Math.round((lightness * 255) / 100)
}
