import { expect, test } from 'vitest'
import { readFirmwareSources } from '../../../src/build/core-files'
import { loadFirmwareSources } from '../../../src/export/core-files'

test('the bundler and Node give the same sources for a firmware bundle', async () => {
  const sources = await loadFirmwareSources()
  expect(sources).toEqual(readFirmwareSources())
  expect(Object.keys(sources.coreFiles)).toContain('movewright.h')
  expect(Object.keys(sources.templateFiles)).toContain('Makefile')
  expect(Object.keys(sources.coreFiles).some((path) => path.includes('wasm'))).toBe(false)
})
