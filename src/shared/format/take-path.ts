import { fail, ok, type Result } from '../model/result'
import { LIBRARY_FILE } from '../words/en/library-file'
import { BACKGROUND_FOLDER } from './file-names'

/** Whose take of what a CSV file is, by where it lies. */
export type TakePath =
  | { kind: 'take'; gesture: string; tester: string }
  | { kind: 'background'; tester: string }

/**
 * Reads gesture and tester from a path (FORMAT.md, "Folder of takes"):
 * `<gesture>/<tester>_<number>.csv` or `<gesture>__<tester>__<number>.csv`, in any folder; the
 * gesture `background` marks recordings that hold none. The number may hold anything.
 * @param path relative, parted by '/' or '\'
 * @returns failure 'folder/name' that says how to name the file
 */
export function parseTakePath(path: string): Result<TakePath> {
  const parts = path.split(/[/\\]/).filter((part) => part !== '' && part !== '.')
  const stem = (parts.at(-1) ?? '').replace(/\.csv$/i, '')
  const named = fromFileName(stem) ?? fromFolder(parts.at(-2) ?? '', stem)
  if (named === null) {
    return fail('folder/name', LIBRARY_FILE.takeName(path))
  }
  if (named.gesture.toLowerCase() === BACKGROUND_FOLDER) {
    return ok({ kind: 'background', tester: named.tester })
  }
  return ok({ kind: 'take', ...named })
}

function fromFileName(stem: string): { gesture: string; tester: string } | null {
  const [gesture, tester, number, ...rest] = stem.split('__')
  if (!gesture || !tester || !number || rest.length > 0) return null
  return { gesture, tester }
}

function fromFolder(folder: string, stem: string): { gesture: string; tester: string } | null {
  const match = /^(.+)_[^_]+$/.exec(stem)
  if (folder === '' || stem.includes('__') || !match?.[1]) return null
  return { gesture: folder, tester: match[1] }
}
