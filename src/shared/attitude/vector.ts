/** x, y, z. */
export type Vector3 = readonly [number, number, number]

export function add(a: Vector3, b: Vector3): Vector3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

export function subtract(a: Vector3, b: Vector3): Vector3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

export function scale(a: Vector3, factor: number): Vector3 {
  return [a[0] * factor, a[1] * factor, a[2] * factor]
}

export function dot(a: Vector3, b: Vector3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

export function cross(a: Vector3, b: Vector3): Vector3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/** Length of a. Not Math.hypot, which guards against overflow and is ten times slower. */
export function norm(a: Vector3): number {
  return Math.sqrt(dot(a, a))
}

/** a with length 1, or `fallback` when a has no direction. */
export function direction(a: Vector3, fallback: Vector3): Vector3 {
  const length = norm(a)
  return length > 1e-9 ? scale(a, 1 / length) : fallback
}

/** The part of a at right angles to the unit vector `axis`. */
export function across(a: Vector3, axis: Vector3): Vector3 {
  return subtract(a, scale(axis, dot(a, axis)))
}
