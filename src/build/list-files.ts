import { readdirSync } from 'node:fs'
import { join, relative, sep } from 'node:path'

/** All files below a folder, as paths relative to it with forward slashes, sorted. */
export function listFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort()
}
