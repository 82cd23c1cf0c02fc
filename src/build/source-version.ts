import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { repositoryPath } from './paths'

/** Which sources something was made from. */
export interface SourceVersion {
  app: string
  /** Null where there is no git, as in an unpacked archive. */
  commit: string | null
}

/** Version of package.json, and the commit of the work tree with a word when it was changed since. */
export function sourceVersion(): SourceVersion {
  const { version } = JSON.parse(readFileSync(repositoryPath('package.json'), 'utf8'))
  return { app: String(version), commit: commitOfTree() }
}

function commitOfTree(): string | null {
  const git = (...args: string[]) =>
    execFileSync('git', args, {
      cwd: repositoryPath('.'),
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }).trim()
  try {
    const commit = git('rev-parse', 'HEAD')
    return git('--no-optional-locks', 'status', '--porcelain', '--untracked-files=no') === ''
      ? commit
      : `${commit} with changes`
  } catch {
    return null
  }
}
