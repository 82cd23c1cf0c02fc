import type { Rate } from '../../model/evaluation'

/** Narrow no-break space: between a number and its unit, so that a line never breaks there. */
export const UNIT_SPACE = '\u202f'

/** Digits in groups of three with a narrow space (ISO 80000-1), four digits stay together. */
export function groupDigits(value: number): string {
  const text = Math.round(value).toString()
  const digits = text.replace('-', '')
  if (digits.length < 5) return text
  return text.replace(/\B(?=(\d{3})+$)/g, UNIT_SPACE)
}

/** A number with as many decimals as its size needs to be told apart, about three digits. */
export function shortNumber(value: number): string {
  if (!Number.isFinite(value)) return 'not known'
  const size = Math.abs(value)
  if (size >= 100 || value === 0) return groupDigits(value)
  return String(Number(value.toPrecision(size >= 10 ? 3 : 2)))
}

/** A share as percent with one decimal; 0 and 100 only where they are exact. */
export function percent(share: number): string {
  if (!Number.isFinite(share)) return 'no data'
  if (share <= 0 || share >= 1) return `${share * 100}${UNIT_SPACE}%`
  const tenths = Math.min(999, Math.max(1, Math.round(share * 1000)))
  return `${(tenths / 10).toFixed(1)}${UNIT_SPACE}%`
}

/** k of n, as it stands beside a share. */
export function countOf(rate: Rate): string {
  return `${groupDigits(rate.hits)}/${groupDigits(rate.n)}`
}

/** Ends of an interval of shares, in percent: '93.1 to 98.2 %'. */
export function percentRange(low: number, high: number): string {
  if (!Number.isFinite(low) || !Number.isFinite(high)) return 'no data'
  return `${trimZero(low * 100)} to ${trimZero(high * 100)}${UNIT_SPACE}%`
}

function trimZero(value: number): string {
  return String(Number(value.toFixed(1)))
}

/** Bytes below 10 240 as they are, above in KiB. */
export function byteText(bytes: number): string {
  if (bytes < 10_240) return `${groupDigits(bytes)}${UNIT_SPACE}B`
  return `${(bytes / 1024).toFixed(1)}${UNIT_SPACE}KiB`
}

/** Milliseconds below 10 s, seconds below 2 min, then minutes. */
export function durationText(ms: number): string {
  if (ms < 10_000) return `${groupDigits(ms)}${UNIT_SPACE}ms`
  if (ms < 120_000) return `${(ms / 1000).toFixed(1)}${UNIT_SPACE}s`
  return `${(ms / 60_000).toFixed(1)}${UNIT_SPACE}min`
}

/** One thing or several: plural('take', 3) is '3 takes'. */
export function plural(word: string, count: number): string {
  return `${groupDigits(count)} ${word}${count === 1 ? '' : 's'}`
}
