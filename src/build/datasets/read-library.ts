import { existsSync, readFileSync, statSync } from 'node:fs'
import { basename, join } from 'node:path'
import { readLibraryFile } from '../../shared/format/library-file'
import { libraryFromFolder } from '../../shared/format/take-folder'
import type { FullLibrary } from '../../shared/model/library'
import { fail, type Result } from '../../shared/model/result'
import { defaultTarget } from '../../shared/target/default-target'
import { listFiles } from '../list-files'

/**
 * A library from a library file, or from a folder of CSV takes (FORMAT.md, "Folder of takes") for
 * the default target.
 */
export function readLibraryAt(path: string): Result<FullLibrary> {
  if (!existsSync(path)) {
    return fail('path/absent', `There is nothing at ${path}: name a library file or a folder.`)
  }
  if (!statSync(path).isDirectory()) return readLibraryFile(readFileSync(path))
  const files = listFiles(path)
    .filter((file) => /\.csv$/i.test(file))
    .map((file) => ({ path: file, text: readFileSync(join(path, file), 'utf8') }))
  return libraryFromFolder(basename(path), files, defaultTarget())
}
