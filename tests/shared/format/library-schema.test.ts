import { readFileSync } from 'node:fs'
import Ajv2020 from 'ajv/dist/2020'
import { strFromU8, unzipSync } from 'fflate'
import { expect, test } from 'vitest'
import { LIBRARY_SCHEMA_PATH, librarySchemaText } from '../../../src/build/schema'
import { writeLibraryFile } from '../../../src/shared/format/library-file'
import { sampleLibrary } from './sample-library'

const published = readFileSync(LIBRARY_SCHEMA_PATH, 'utf8')
const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(JSON.parse(published))

function writtenJson() {
  const files = unzipSync(writeLibraryFile(sampleLibrary()))
  return JSON.parse(strFromU8(files['library.json'] ?? new Uint8Array()))
}

test('the published JSON Schema is the one the app reads by (else: npm run schema)', () => {
  expect(published).toBe(librarySchemaText())
})

test('a written library.json fits the published JSON Schema, by ajv', () => {
  expect(validate(writtenJson()), JSON.stringify(validate.errors)).toBe(true)
})

test('the published JSON Schema refuses an unknown key, a missing key and a wrong range', () => {
  expect(validate({ ...writtenJson(), extra: 1 })).toBe(false)
  const { library: _, ...incomplete } = writtenJson()
  expect(validate(incomplete)).toBe(false)
  const wrong = writtenJson()
  wrong.library.target.rateHz = 5000
  expect(validate(wrong)).toBe(false)
})
