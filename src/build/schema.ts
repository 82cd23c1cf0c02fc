import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { toJsonSchema } from '@valibot/to-json-schema'
import { libraryDocumentSchema } from '../shared/format/library-schema'
import { LIBRARY_FORMAT_VERSION } from '../shared/model/library'

/** Where the JSON Schema of `library.json` is published, served with the app. */
export const LIBRARY_SCHEMA_PATH = fileURLToPath(
  new URL(`../../public/schema/library-${LIBRARY_FORMAT_VERSION}.json`, import.meta.url),
)

/** JSON Schema (draft 2020-12) of `library.json`, made from the schema the app itself reads by. */
export function librarySchemaText(): string {
  const { $schema: _, ...schema } = toJsonSchema(libraryDocumentSchema, { target: 'draft-2020-12' })
  const published = {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: `movewright/library-${LIBRARY_FORMAT_VERSION}.json`,
    title: `Movewright library.json, format version ${LIBRARY_FORMAT_VERSION}`,
    description:
      'Everything of a library but its samples, which are CSV files beside it. See FORMAT.md.',
    ...schema,
  }
  return `${JSON.stringify(published, null, 2)}\n`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(dirname(LIBRARY_SCHEMA_PATH), { recursive: true })
  writeFileSync(LIBRARY_SCHEMA_PATH, librarySchemaText())
  console.log(`written ${LIBRARY_SCHEMA_PATH}`)
}
