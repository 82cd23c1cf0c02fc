import { fileURLToPath } from 'node:url'

const REPOSITORY = new URL('../../', import.meta.url)

/** Absolute path of a file or folder named from the root of the repository. */
export function repositoryPath(path: string): string {
  return fileURLToPath(new URL(path, REPOSITORY))
}

/** What `npm run build` writes: static files for any host. */
export const DIST = repositoryPath('dist')
