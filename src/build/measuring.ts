import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { repositoryPath } from './paths'

/** Folders of `src/shared` whose code is in every figure that the app keeps, beside the core's. */
const MEASURING = [
  ...['conditioning', 'core', 'training', 'evaluation', 'statistics'],
  ...['decide', 'grip', 'compare', 'teach'],
]

/**
 * SHA-256, hex, of the sources that train and measure: figures of another one may differ on the same takes.
 * Text counts and not meaning, so that a comment makes figures older and a changed formula never passes.
 * @param shared the folder of `src/shared`, from which tests give another one
 */
export function measuringDigest(shared = repositoryPath('src/shared')): string {
  const hash = createHash('sha256')
  for (const folder of MEASURING) {
    const names = readdirSync(`${shared}/${folder}`, { recursive: true, encoding: 'utf8' })
    for (const name of names.filter((one) => one.endsWith('.ts')).sort()) {
      const path = `${folder}/${name}`.replaceAll('\\', '/')
      const text = readFileSync(`${shared}/${path}`, 'utf8').replaceAll('\r\n', '\n')
      hash.update(JSON.stringify([path, text]))
    }
  }
  return hash.digest('hex')
}
