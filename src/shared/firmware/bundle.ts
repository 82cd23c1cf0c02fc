import { strToU8 } from 'fflate'
import { isSafePath } from '../format/zip-read'
import { writeZip } from '../format/zip-write'
import { fail, ok, type Result } from '../model/result'
import { answeringLibrary, type LightOrigin, lightNote, uncovered } from './light-note'
import { effectHeader, effectTable } from './light-source'
import { modelHeader, modelSource } from './model-source'
import { bundleReadme } from './readme'
import { type Vector, vectorNumber, vectorText } from './vector'
import { vectorsReadme } from './vectors-readme'

/** Text files by path. */
export type TextFiles = Record<string, string>

export interface FirmwareInput extends LightOrigin {
  /** Sources of the core by name, such as `movewright.h`; they go to `core/` as they are. */
  coreFiles: TextFiles
  /** Files of `templates/` by path, such as `example/main.c`; they go in as they are. */
  templateFiles: TextFiles
  vectors: readonly Vector[]
}

/** Without these the bundle does not build. */
const NEEDED_CORE = ['movewright.h', 'mvw_core.c']
const NEEDED_TEMPLATES = ['Makefile', 'CMakeLists.txt', 'example/main.c', 'selftest/selftest.c']

/**
 * The firmware bundle (FORMAT.md): a ZIP of sources that builds and tests itself anywhere with a C99
 * compiler. The same input gives the same bytes.
 * @returns failures 'firmware/no-gesture', 'firmware/no-vectors', 'firmware/sources',
 *   'firmware/light' when the light is over a limit and nobody has acknowledged it in writing
 */
export function makeFirmwareBundle(input: FirmwareInput): Result<Uint8Array> {
  const problem = problemWith(input)
  if (problem) return problem
  const files = bundleFiles(input).map(([path, text]): [string, Uint8Array] => [
    path,
    strToU8(text),
  ])
  return ok(writeZip([...files, ['model/model.bin', input.trained.bytes]]))
}

/** Paths and texts of the bundle, in the order they are packed; the model's bytes come behind them. */
export function bundleFiles(input: FirmwareInput): [string, string][] {
  const inFolder = (folder: string, files: TextFiles): [string, string][] =>
    Object.entries(files)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([path, text]) => [`${folder}${path}`, text])
  const vectors = input.vectors.flatMap((vector, index): [string, string][] => {
    const stem = `vectors/${vectorNumber(index)}-${vector.name}`
    return [
      [`${stem}.in`, vectorText(vector)],
      [`${stem}.log`, vector.log],
    ]
  })
  return [
    ['README.md', bundleReadme(input, input.vectors.length)],
    ...inFolder('', input.templateFiles),
    ...inFolder('core/', input.coreFiles),
    ['model/model.h', modelHeader(input)],
    ['model/model.c', modelSource(input)],
    ['effects/effect_table.h', effectHeader(input.library, input.lightVector)],
    ['effects/effect_table.c', effectTable(answeringLibrary(input), lightNote(input))],
    ['vectors/README.md', vectorsReadme(input.trained.model, input.vectors)],
    ...vectors,
  ]
}

function problemWith(input: FirmwareInput) {
  const { gestures } = input.trained.model
  if (gestures.length === 0 || gestures.some(({ templates }) => templates.length === 0)) {
    return fail(
      'firmware/no-gesture',
      'The model has a gesture without templates. Record takes and train again.',
    )
  }
  if (input.vectors.length === 0) {
    return fail('firmware/no-vectors', 'There are no vectors to prove the firmware with.')
  }
  const open = uncovered(input)
  if (open[0] !== undefined) {
    return fail(
      'firmware/light',
      `${open[0]} Mend it on Prop, Light, or acknowledge it there in writing.`,
    )
  }
  const missing = [
    ...NEEDED_CORE.filter((name) => !Object.hasOwn(input.coreFiles, name)),
    ...NEEDED_TEMPLATES.filter((name) => !Object.hasOwn(input.templateFiles, name)),
  ]
  const unsafe = [...Object.keys(input.coreFiles), ...Object.keys(input.templateFiles)].filter(
    (path) => !isSafePath(path),
  )
  if (missing.length + unsafe.length === 0) return null
  return fail(
    'firmware/sources',
    `The sources of the firmware are not whole (${[...missing, ...unsafe].join(', ')}). Reload the app while online.`,
  )
}
