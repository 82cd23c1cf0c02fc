import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { repositoryPath } from './paths'

/**
 * Builds the app into a folder of its own, so that what is measured is what the sources say now.
 * Call `remove` at the end.
 */
export function buildApart(): { folder: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'movewright-built-'))
  const remove = () => rmSync(folder, { recursive: true, force: true })
  const { status, stderr } = spawnSync(
    process.execPath,
    ['--import', 'tsx', repositoryPath('src/build/build.ts')],
    { env: { ...process.env, MOVEWRIGHT_DIST: folder }, encoding: 'utf8' },
  )
  if (status === 0) return { folder, remove }
  remove()
  throw new Error(`The app could not be built, so it was not measured.\n${stderr}`)
}
