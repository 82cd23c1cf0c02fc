import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

const REPOSITORY = new URL('../../', import.meta.url)

/** Absolute path of a file or folder named from the root of the repository. */
export function repositoryPath(path: string): string {
  return fileURLToPath(new URL(path, REPOSITORY))
}

/**
 * What `npm run build` writes: static files for any host. MOVEWRIGHT_DIST names another folder, so
 * that one build can be looked at while the next is made.
 */
export const DIST = resolve(process.env.MOVEWRIGHT_DIST ?? repositoryPath('dist'))
