import { existsSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { fail, ok, type Result } from '../../shared/model/result'

const PROJECT = fileURLToPath(new URL('../../..', import.meta.url))

/** Folder that holds the public data sets: MOVEWRIGHT_DATASETS, else `../shared/datasets`. */
export function datasetsRoot(): string {
  return resolve(PROJECT, process.env.MOVEWRIGHT_DATASETS ?? join('..', 'shared', 'datasets'))
}

/** Path of one data set, or why its figures are skipped. The project works without any of them. */
export function datasetFolder(name: string): Result<string> {
  const folder = join(datasetsRoot(), name)
  if (existsSync(folder)) return ok(folder)
  return fail(
    'dataset/absent',
    `${name} is not in ${datasetsRoot()}, so its figures are skipped; set MOVEWRIGHT_DATASETS to the folder that holds it.`,
  )
}
