import { joinBytes } from './join-bytes'
import { ZipBuilder } from './zip-build'

/**
 * A ZIP of files by path, in the order given. The bytes depend on the files alone.
 * @param files paths relative, with '/' between parts
 */
export function writeZip(files: readonly (readonly [string, Uint8Array])[]): Uint8Array {
  const zip = new ZipBuilder()
  for (const [path, bytes] of files) zip.deflate(path, bytes)
  zip.end()
  return joinBytes(zip.pieces)
}
