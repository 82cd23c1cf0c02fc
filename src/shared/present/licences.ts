/** A package inside the app and the terms it comes under. */
export interface PackageLicence {
  name: string
  version: string
  /** As the package says, such as 'MIT'. */
  licence: string
  text: string
}

const HEADING = /^## (\S+) - (\S+) \((.+)\)$/

/** The packages in the list that the bundler writes: a heading each, its text below. */
export function packageLicences(markdown: string): PackageLicence[] {
  const found: PackageLicence[] = []
  for (const line of markdown.split(/\r?\n/)) {
    const [, name, version, licence] = HEADING.exec(line) ?? []
    if (name !== undefined && version !== undefined && licence !== undefined) {
      found.push({ name, version, licence: licence.replace(/^\((.*)\)$/, '$1'), text: '' })
      continue
    }
    const last = found.at(-1)
    if (last !== undefined) last.text += `${line}\n`
  }
  return found
    .map((one) => ({ ...one, text: one.text.trim() }))
    .sort((a, b) => a.name.localeCompare(b.name))
}
