/** An expected failure as a value: it crosses threads whole, where errors lose their fields. */
export interface Failure {
  ok: false
  /** Stable name of the failure, such as 'csv/short-row'. */
  code: string
  /** One sentence for people: what is wrong, where, and what to do. */
  message: string
}

export type Result<T> = { ok: true; value: T } | Failure

export function ok<T>(value: T): { ok: true; value: T } {
  return { ok: true, value }
}

export function fail(code: string, message: string): Failure {
  return { ok: false, code, message }
}
