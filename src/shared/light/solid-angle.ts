/** Flashing area that WCAG 2.3.1 lets pass within any 10 degree field: a quarter of it, sr. */
export const SMALL_AREA_SR = 0.006

/** Solid angle of a cone of a full angle in degrees, sr. */
export function coneSr(degrees: number): number {
  return 2 * Math.PI * (1 - Math.cos((degrees * Math.PI) / 360))
}

/** Solid angle of a sphere of a diameter seen from a distance to its centre, sr, as a flat disc. */
export function discSr(diameterM: number, distanceM: number): number {
  return (Math.PI * (diameterM / 2) ** 2) / distanceM ** 2
}
