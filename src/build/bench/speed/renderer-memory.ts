import { readdirSync, readFileSync } from 'node:fs'

/**
 * Most memory that a page's process of the browser on this profile has held so far, MiB: the greatest
 * resident set that Linux has seen (VmHWM). NaN elsewhere.
 */
export function peakOfPages(profile: string): number {
  const peaks = processes().flatMap((pid) => {
    try {
      const words = readFileSync(`/proc/${pid}/cmdline`, 'utf8')
      if (!words.includes('--type=renderer') || !words.includes(profile)) return []
      const peak = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))
      return peak === null ? [] : [Number(peak[1]) / 1024]
    } catch {
      // It has ended since.
      return []
    }
  })
  return peaks.length === 0 ? Number.NaN : Math.max(...peaks)
}

function processes(): string[] {
  try {
    return readdirSync('/proc').filter((name) => /^\d+$/.test(name))
  } catch {
    return []
  }
}
