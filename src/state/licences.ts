import { fail, ok, type Result } from '../shared/model/result'
import { type PackageLicence, packageLicences } from '../shared/present/licences'
import { LICENCES_TROUBLE } from '../shared/words/en/licences-trouble'

/** Written by the build beside the page, and kept for offline use like everything there. */
const FILE = './third-party-licences.md'

/** Packages inside the app. Codes: 'licences/missing' (a development server has no such file). */
export async function loadLicences(): Promise<Result<PackageLicence[]>> {
  const missing = fail('licences/missing', LICENCES_TROUBLE.missing)
  try {
    const answer = await fetch(FILE)
    const packages = answer.ok ? packageLicences(await answer.text()) : []
    return packages.length === 0 ? missing : ok(packages)
  } catch {
    return missing
  }
}
