import { readFileSync } from 'node:fs'
import { posix } from 'node:path'
import { listFiles } from '../../src/build/list-files'
import { repositoryPath } from '../../src/build/paths'

export interface SourceFile {
  /** From the root of the repository, with forward slashes. */
  path: string
  text: string
}

export interface Import {
  from: string
  /** As written. */
  specifier: string
  /** Vanishes when compiled. */
  typeOnly: boolean
  /** Loaded as a file by its address: a worker or an asset. */
  byAddress: boolean
  /** File it leads to, from the root of the repository; null for a package. */
  target: string | null
}

/** Files below a folder of the repository whose names end in one of these. */
export function filesBelow(folder: string, endings: string[]): SourceFile[] {
  return listFiles(repositoryPath(folder))
    .filter((path) => endings.some((ending) => path.endsWith(ending)))
    .map((path) => posix.join(folder, path))
    .filter((path) => !path.startsWith('src/core/build/'))
    .map((path) => ({ path, text: readFileSync(repositoryPath(path), 'utf8') }))
}

export function typescriptOf(...folders: string[]): SourceFile[] {
  return folders.flatMap((folder) => filesBelow(folder, ['.ts', '.tsx']))
}

const FORMS: { pattern: RegExp; typeOnly?: boolean; byAddress?: boolean }[] = [
  { pattern: /^(?:import|export) type [^'"]*?from '([^']+)'/gm, typeOnly: true },
  { pattern: /^(?:import|export)(?! type )[^'";]*?from '([^']+)'/gm },
  { pattern: /^import '([^']+)'/gm },
  { pattern: /\bimport\(\s*'([^']+)'/g },
  { pattern: /new URL\(\s*'([^']+)',\s*import\.meta\.url/g, byAddress: true },
]

/** Every import of a file; the formatter makes all of them look alike, so patterns will do. */
export function importsOf({ path, text }: SourceFile): Import[] {
  return FORMS.flatMap(({ pattern, typeOnly = false, byAddress = false }) =>
    [...text.matchAll(pattern)].map(([, specifier = '']) => ({
      from: path,
      specifier,
      typeOnly,
      byAddress: byAddress || specifier.includes('?'),
      target: specifier.startsWith('.')
        ? posix.join(posix.dirname(path), specifier.replace(/\?.*$/, ''))
        : null,
    })),
  )
}

/** Name of a package without a path inside it: 'a/b' -> 'a', '@s/a/b' -> '@s/a'. */
export function packageName(specifier: string): string {
  const parts = specifier.split('/')
  return parts.slice(0, specifier.startsWith('@') ? 2 : 1).join('/')
}
