import { expect, it } from 'vitest'
import { packageLicences } from '../../../src/shared/present/licences'

const LIST = `# Licenses

The app bundles dependencies which contain the following licenses:

## zip - 2.0.1 (ISC)

Use it.

Copyright someone

## @scope/two - 1.0.0 ((MIT OR Apache-2.0))
`

it('packages are listed by name with version, licence and the text below their heading', () => {
  expect(packageLicences(LIST)).toEqual([
    { name: '@scope/two', version: '1.0.0', licence: 'MIT OR Apache-2.0', text: '' },
    { name: 'zip', version: '2.0.1', licence: 'ISC', text: 'Use it.\n\nCopyright someone' },
  ])
})

it('a page that is no such list has no packages', () => {
  expect(packageLicences('<!doctype html>')).toEqual([])
})
