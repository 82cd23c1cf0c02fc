import { readdirSync, readFileSync } from 'node:fs'
import { relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'

const coreDir = fileURLToPath(new URL('../core/', import.meta.url))
const templateDir = fileURLToPath(new URL('../shared/firmware/templates/', import.meta.url))

/** The sources that a firmware bundle is made of, from the work tree. */
export function readFirmwareSources(): {
  coreFiles: Record<string, string>
  templateFiles: Record<string, string>
} {
  const core = readdirSync(coreDir).filter((name) => /\.[ch]$/.test(name))
  const templates = readdirSync(templateDir, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(templateDir, `${entry.parentPath}/${entry.name}`))
  return { coreFiles: texts(coreDir, core), templateFiles: texts(templateDir, templates) }
}

function texts(folder: string, names: string[]): Record<string, string> {
  return Object.fromEntries(
    names.map((name) => [name.split(sep).join('/'), readFileSync(folder + name, 'utf8')]),
  )
}
