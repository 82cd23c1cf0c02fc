import { plural } from './numbers'

const MINUTE_MS = 60_000
const HOUR_MS = 60 * MINUTE_MS
const DAY_MS = 24 * HOUR_MS

/**
 * How long ago something was done: 'just now', '5 minutes ago', '3 hours ago', '12 days ago'.
 * @param at RFC 3339
 */
export function ageText(at: string, nowMs: number): string {
  const ageMs = nowMs - Date.parse(at)
  if (!(ageMs >= MINUTE_MS)) return 'just now'
  if (ageMs < HOUR_MS) return `${plural('minute', Math.floor(ageMs / MINUTE_MS))} ago`
  if (ageMs < DAY_MS) return `${plural('hour', Math.floor(ageMs / HOUR_MS))} ago`
  return `${plural('day', Math.floor(ageMs / DAY_MS))} ago`
}
