import { readFileSync } from 'node:fs'
import { commands } from '@yowasp/clang'
import { type Build, SELF_TEST_BODY } from './build'
import { readOutput, type SelfTestOutput } from './self-test-output'
import { probeFile, type Workshop } from './workshop'

const FLAGS = [
  ...['--target=wasm32', '-std=c99', '-O2', '-Wall', '-Wextra', '-Wpedantic', '-Werror'],
  ...['-ffreestanding', '-fno-builtin', '-mbulk-memory', '-nostdlib', '-Wl,--no-entry'],
  ...['-Icore', '-Imodel', '-Iselftest'],
]

/** The bundle and its self-test over a serial line, as WebAssembly. */
export const WASM: Build = { name: 'wasm', tools: ['make'], run }

interface Tree {
  [name: string]: string | Tree
}

function folder(shop: Workshop, path: string): Tree {
  const names = [...shop.files(path, '.c'), ...shop.files(path, '.h')]
  return Object.fromEntries(names.map((name) => [name.slice(path.length + 1), shop.text(name)]))
}

async function compile(shop: Workshop): Promise<Uint8Array> {
  const port = readFileSync(probeFile('wasm_port.c'), 'utf8')
  const tree: Tree = { 'port.c': port }
  for (const name of ['core', 'model', 'selftest']) tree[name] = folder(shop, name)
  const body = [...SELF_TEST_BODY, 'selftest/board_serial.c']
  const sources = [...shop.files('core', '.c'), 'model/model.c', ...body, 'port.c']
  let words = ''
  const listen = (bytes: Uint8Array | null) => {
    if (bytes) words += new TextDecoder().decode(bytes)
  }
  try {
    const files = await commands.clang([...FLAGS, ...sources, '-o', 'out.wasm'], tree, {
      fetchProgress: () => {},
      stdout: listen,
      stderr: listen,
    })
    const bytes = files?.['out.wasm']
    if (bytes instanceof Uint8Array) return bytes
    throw new Error('no output file')
  } catch (error) {
    throw new Error(`The bundle does not compile to WebAssembly.\n${words || error}`)
  }
}

async function run(shop: Workshop): Promise<SelfTestOutput> {
  shop.run('make', ['serial'])
  const input = shop.text('build/serial_vectors.txt')
  const printed: number[] = []
  let next = 0
  const host = {
    put: (character: number) => printed.push(character),
    get: () => (next < input.length ? input.charCodeAt(next++) : 10),
  }
  const bytes = (await compile(shop)) as BufferSource
  const { instance } = await WebAssembly.instantiate(bytes, { host })
  ;(instance.exports as { run(): void }).run()
  return readOutput(printed.map((c) => String.fromCharCode(c)).join(''))
}
