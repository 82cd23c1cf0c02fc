import { strFromU8, strToU8, unzipSync } from 'fflate'
import { joinBytes } from '../../shared/format/join-bytes'
import { writeZip } from '../../shared/format/zip-write'
import type { Random } from '../../shared/statistics/random'

const BYTES = [0, 1, 0x7f, 0x80, 0xff]
const WORDS = [0, 1, 0xffff, 0x10000, 0x7fffffff, 0x80000000, 0xffffffff]
/** Values that JSON, CSV or a spreadsheet may stumble over, in place of a number or a text. */
const TOKENS = [
  ...['1e999', '-1e999', '-0', 'NaN', 'Infinity', '1e308', '5e-324', '0.1', '-1', '2147483648'],
  ...['""', 'null', '[]', '{}', 'true', '"__proto__"', '"constructor"', '"=1+1"', '"@SUM(A1)"'],
  ...['"../../other.csv"', '"<img src=x onerror=alert(1)>"', '"\\u202egnir"', '"\\u0000"'],
  `"${'long '.repeat(300)}"`,
  `${'['.repeat(3000)}${']'.repeat(3000)}`,
  '{"__proto__":{"polluted":1}}',
]
const KEYS = ['"__proto__":', '"constructor":', '"toString":', '"id":', '"":']
const PATHS = ['../x.csv', '/x.csv', 'a\\x.csv', 'takes/../../x', 'C:x.csv', '__proto__', 'a/./b']
const MOST_CHANGES = 4

const pick = <T>(random: Random, items: readonly T[]): T => items[random.integer(items.length)] as T

/** A copy with one to four things wrong: bits, bytes, numbers, stretches lost, doubled or swapped. */
export function mutateBytes(bytes: Uint8Array, random: Random): Uint8Array {
  let changed: Uint8Array = bytes.slice()
  for (let left = 1 + random.integer(MOST_CHANGES); left > 0; left--) {
    changed = mutateOnce(changed, random)
  }
  return changed
}

function mutateOnce(bytes: Uint8Array, random: Random): Uint8Array {
  if (bytes.length < 8) return Uint8Array.from(bytes, () => random.integer(256))
  const at = random.integer(bytes.length)
  const length = 1 + random.integer(Math.min(64, bytes.length - at))
  const word = Math.min(at, bytes.length - 4)
  switch (random.integer(8)) {
    case 0:
      return withByte(bytes, at, (bytes[at] ?? 0) ^ (1 << random.integer(8)))
    case 1:
      return withByte(bytes, at, pick(random, BYTES))
    case 2:
      new DataView(bytes.buffer).setUint32(word, pick(random, WORDS), random.integer(2) === 0)
      return bytes
    case 3:
      return joinBytes([bytes.subarray(0, at), bytes.subarray(at + length)])
    case 4:
      return joinBytes([bytes.subarray(0, at + length), bytes.subarray(at)])
    case 5:
      return bytes.slice(0, at)
    case 6: {
      const noise = Uint8Array.from({ length }, () => random.integer(256))
      return joinBytes([bytes.subarray(0, at), noise, bytes.subarray(at)])
    }
    default:
      return bytes.copyWithin(random.integer(bytes.length - length + 1), at, at + length)
  }
}

function withByte(bytes: Uint8Array, at: number, value: number): Uint8Array {
  bytes[at] = value
  return bytes
}

/** A text with a number, a text, a key or a line replaced, lost or doubled. */
export function mutateText(text: string, random: Random): string {
  switch (random.integer(5)) {
    case 0:
      return replaceOne(text, /"[^"\n]*":/g, pick(random, KEYS), random)
    case 1:
      return replaceOne(text, /[^\n]*\n/g, '', random)
    case 2:
      return replaceOne(text, /[^\n]*\n/g, (line) => line + line, random)
    case 3:
      return replaceOne(text, /"[^"\n]*"(?!:)/g, pick(random, TOKENS), random)
    default:
      return replaceOne(text, /-?\d[\d.e+-]*/g, pick(random, TOKENS), random)
  }
}

function replaceOne(
  text: string,
  pattern: RegExp,
  by: string | ((found: string) => string),
  random: Random,
): string {
  const found = [...text.matchAll(pattern)]
  const one = found[random.integer(Math.max(1, found.length))]
  if (one === undefined) return text
  const put = typeof by === 'string' ? by : by(one[0])
  return text.slice(0, one.index) + put + text.slice(one.index + one[0].length)
}

/** A ZIP whose parts were changed and packed again, so that every checksum in it is right. */
export function mutateInside(zip: Uint8Array, random: Random): Uint8Array {
  const files = Object.entries(unzipSync(zip))
  const at = random.integer(files.length)
  const [path, content] = files[at] ?? ['', new Uint8Array()]
  const changed = changedFile(path, content, files, random)
  return writeZip(files.flatMap((file, index) => (index === at ? changed : [file])))
}

type File = [path: string, content: Uint8Array]

/** What stands in a file's place: nothing, it twice, under a bad name, or with other content. */
function changedFile(path: string, content: Uint8Array, files: File[], random: Random): File[] {
  switch (random.integer(10)) {
    case 0:
      return [[pick(random, PATHS), content]]
    case 1:
      return [
        [path, content],
        [path, content],
      ]
    case 2:
      return []
    case 3:
      return [[path, mutateBytes(content, random)]]
    case 4:
      return [[path, pick(random, files)[1]]]
    default:
      return [[path, strToU8(mutateText(strFromU8(content), random))]]
  }
}
