import { describe, expect, it } from 'vitest'
import { filesBelow } from './source-files'

const ENDINGS = ['.ts', '.tsx', '.css', '.html', '.json', '.md', '.c', '.h', '.webmanifest']
const files = ['src', 'workers', 'tests', 'public'].flatMap((folder) => filesBelow(folder, ENDINGS))

describe('what is written in the files', () => {
  it('names no folder of one machine', () => {
    expect(
      linesWith(/['"`\s(](\/(?:home|root|Users|tmp|work|mnt)\/[\w.-]+|[A-Z]:\\\\?\w+)/),
    ).toEqual([])
  })

  it('promises nothing for later', () => {
    expect(linesWith(/\b(TODO|FIXME|XXX|HACK)\b/)).toEqual([])
  })
})

function linesWith(pattern: RegExp): string[] {
  return files
    .filter(({ path }) => path !== 'tests/architecture/texts.test.ts')
    .flatMap(({ path, text }) =>
      text
        .split('\n')
        .flatMap((line, index) =>
          pattern.test(line) ? [`${path}:${index + 1} ${line.trim()}`] : [],
        ),
    )
}
