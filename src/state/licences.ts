import { fail, ok, type Result } from '../shared/model/result'
import { type PackageLicence, packageLicences } from '../shared/present/licences'

/** Written by the build beside the page, and kept for offline use like everything there. */
const FILE = './third-party-licences.md'

/** Packages inside the app. Codes: 'licences/missing' (a development server has no such file). */
export async function loadLicences(): Promise<Result<PackageLicence[]>> {
  const missing = fail(
    'licences/missing',
    'The list of packages is not here: it is part of the built app (third-party-licences.md).',
  )
  try {
    const answer = await fetch(FILE)
    const packages = answer.ok ? packageLicences(await answer.text()) : []
    return packages.length === 0 ? missing : ok(packages)
  } catch {
    return missing
  }
}
