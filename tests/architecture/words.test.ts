import { describe, expect, it } from 'vitest'
import { englishIn } from './english'
import { filesBelow, importsOf, typescriptOf } from './source-files'

const WORDS = 'src/shared/words/'
const WORDS_LINES = 250

/** Commands speak to those who build; C and what is exported with it are in English, as C is. */
const ELSEWHERE = ['src/build/', 'src/core/', 'src/shared/firmware/']

/** What looks like a sentence and is read by no person. */
const NO_SENTENCES: { path?: RegExp; text: RegExp; because: string }[] = [
  { text: /^movewright( |$)/, because: 'a name of a cache, a lock, a worker or a digest' },
  { text: /^Movewright$/, because: 'the name of the app' },
  { text: /^[a-z]+ [a-z]+-/, because: 'a list of CSS classes' },
  {
    path: /shared\/(collect|backup)\//,
    text: /^(tester|session|content) 0$/,
    because: 'a key of what was withdrawn',
  },
  {
    path: /^src\/(state|storage)\//,
    text: /^0 (background|kept-far|saved elsewhere|log)$/,
    because: 'a key or a name in storage',
  },
  {
    path: /^src\/webdav\//,
    text: /^(Authorization|Basic 0|no session)$/,
    because: 'of an HTTP header, and of no file',
  },
  { path: /\/prop-scene\.ts$/, text: /gl_(Position|FragColor)/, because: 'a shader' },
  { path: /\/report-style\.ts$/, text: /\{[^}]*:[^}]*\}/, because: 'a style sheet' },
  { path: /\/plot\.ts$/, text: /sans-serif$/, because: 'a list of fonts' },
]

const files = typescriptOf('src', 'workers')
const found = files
  .filter(({ path }) => ![WORDS, ...ELSEWHERE].some((folder) => path.startsWith(folder)))
  .flatMap(englishIn)

function exceptionOf({ path, text }: { path: string; text: string }) {
  return NO_SENTENCES.find((one) => (one.path?.test(path) ?? true) && one.text.test(text))
}

describe('sentences and labels stand in src/shared/words', () => {
  it('and nowhere else', () => {
    const left = found.filter((one) => exceptionOf(one) === undefined)
    expect(left.map(({ path, line, text }) => `${path}:${line} ${text}`)).toEqual([])
  })

  it('with no more exceptions than there are strings to except', () => {
    const used = new Set(found.map(exceptionOf))
    expect(NO_SENTENCES.filter((one) => !used.has(one))).toEqual([])
  })

  it.each([
    ['<p>Stop</p>', 'Stop'],
    ['<p>\n  none yet, {count} left\n</p>', 'none yet,'],
    ['<Button label="trim" />', 'trim'],
    ['<Button label={open ? "less" : "more"} />', 'less'],
    ['<img alt={`picture of $' + '{name}`} />', 'picture of 0'],
    ['<Choice options={[{ value: "ask", text: "asks me" }]} />', 'asks me'],
    ['<p>{takes === 0 ? "none yet" : takes}</p>', 'none yet'],
    ['<p>{takes ?? "none"}</p>', 'none'],
    ['<p>{`$' + '{takes} takes`}</p>', '0 takes'],
    ['fail("storage/full", "Storage is full: free some.")', 'Storage is full: free some.'],
    ['new StorageError("storage/full", "Storage is full.")', 'Storage is full.'],
    ['const NAMES = { hold: "Hold" }', 'Hold'],
  ])('and %j would be found', (code, text) => {
    expect(englishIn({ path: 'planted.tsx', text: code }).map((one) => one.text)).toContain(text)
  })

  it.each([
    '<p class="small quiet">{n} ms</p>',
    '<p>{rate} Hz</p>',
    '<Icon name="bin" />',
    '<a href="#/moves" />',
    'if (kind === "no sensor") go("hands-free")',
    'throw new Error("The pool has no worker left.")',
    'type Way = "as it is" | "turned round"',
    'const at = new Intl.DateTimeFormat("en GB")',
  ])('and %j would be left alone', (code) => {
    expect(englishIn({ path: 'planted.tsx', text: code })).toEqual([])
  })
})

describe('files of words', () => {
  const words = filesBelow(WORDS, ['.ts'])

  it(`have at most ${WORDS_LINES} lines, one place or subject each`, () => {
    const long = words.filter(({ text }) => text.split('\n').length - 1 > WORDS_LINES)
    expect(long.map(({ path }) => path)).toEqual([])
  })

  it('are imported one by one, so that a screen brings its own words and no others', () => {
    expect(words.filter(({ path }) => path.endsWith('/index.ts'))).toEqual([])
    const reexported = words.filter(({ text }) => /^export (\*|\{|type \{).* from '/m.test(text))
    expect(reexported.map(({ path }) => path)).toEqual([])
  })

  it('hold no entry that nobody reads', () => {
    const read = new Set(files.flatMap(({ text }) => text.match(/\b[A-Z][A-Z\d_]*\.\w+/g) ?? []))
    const chosen = new Set(files.flatMap(({ text }) => wholeObjects(text)))
    const unread = words.flatMap(({ path, text }) =>
      entriesOf(text)
        .filter(({ name, key }) => !chosen.has(name) && !read.has(`${name}.${key}`))
        .map(({ name, key }) => `${path}: ${name}.${key}`),
    )
    expect(unread).toEqual([])
  })

  it('reach neither for the screens nor for the state', () => {
    const out = words.flatMap(importsOf).filter(({ target }) => !target?.startsWith('src/shared/'))
    expect(out.map(({ from, specifier }) => `${from} imports ${specifier}`)).toEqual([])
  })
})

/** Entries of the objects that a file of words exports; the formatter indents them by two. */
function entriesOf(text: string): { name: string; key: string }[] {
  return [
    ...text.matchAll(/^export const ([A-Z][A-Z\d_]*)(?:: [^=]+)? = \{\n([\s\S]*?)^\}/gm),
  ].flatMap(([, name = '', body = '']) =>
    [...body.matchAll(/^ {2}(\w+)(?::|\()/gm)].map(([, key = '']) => ({ name, key })),
  )
}

/** Objects that are handed on whole, or from which a value chooses. */
function wholeObjects(text: string): string[] {
  const code = text.replace(/^import [^']*'/gm, '')
  return [...code.matchAll(/\b([A-Z][A-Z\d_]+)\b(?![.:\w]| = )/g)].map(([, name = '']) => name)
}
