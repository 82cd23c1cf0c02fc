import { type Zippable, zipSync } from 'fflate'

/** 1980-01-01 00:00:00, the first moment ZIP knows, in whatever zone: same input, same bytes. */
function fixedTime(): Date {
  return new Date(1980, 0, 1)
}

/**
 * A ZIP of files by path, in the order given. The bytes depend on the files alone.
 * @param files paths relative, with '/' between parts
 */
export function writeZip(files: readonly (readonly [string, Uint8Array])[]): Uint8Array {
  const zippable: Zippable = {}
  for (const [path, bytes] of files) zippable[path] = bytes
  return zipSync(zippable, { mtime: fixedTime(), level: 6 })
}
