import { createHash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { commands } from '@yowasp/clang'

const coreDir = fileURLToPath(new URL('../core/', import.meta.url))
const outDir = `${coreDir}build/`

export const CORE_WASM = `${outDir}core.wasm`
/** The same sources with 128-bit vectors: the same integers, many comparisons at once. */
export const CORE_SIMD_WASM = `${outDir}core-simd.wasm`
/** SHA-256 of both, which the app compares before it runs what a host sent. */
const DIGESTS = ['core.sha256', 'core-simd.sha256']
const STAMP = `${outDir}core.stamp`

/** Order and flags are fixed: the same sources give the same bytes on every machine. */
const FLAGS = [
  '--target=wasm32',
  '-std=c99',
  '-O3',
  '-Wall',
  '-Wextra',
  '-Wpedantic',
  '-Werror',
  '-ffreestanding',
  '-fno-builtin',
  '-nostdlib',
  '-I.',
  '-Wl,--no-entry',
  '-Wl,--strip-all',
  '-Wl,--export=__heap_base',
  '-Wl,-z,stack-size=16384',
]

/** The build with vectors, where `port/batch_wasm.c` stands for some of the core's loops. */
export const VECTORS = ['-msimd128', '-Wl,--wrap=mvw_kernel_scores']

const PORTS = ['wasm.c', 'light_wasm.c', 'batch_wasm.c', 'cut_wasm.c', 'dense_wasm.c']

interface Tree {
  [name: string]: string | Uint8Array | Tree
}

function coreSources(): { names: string[]; tree: Tree } {
  const read = (path: string) => readFileSync(coreDir + path, 'utf8')
  const files = readdirSync(coreDir).sort()
  const names = files.filter((name) => /^mvw_.*\.c$/.test(name))
  const headers = files.filter((name) => name.endsWith('.h'))
  const tree: Tree = {
    port: Object.fromEntries(PORTS.map((name) => [name, read(`port/${name}`)])),
  }
  for (const name of [...headers, ...names]) tree[name] = read(name)
  return { names, tree }
}

function stampOf(tree: Tree): string {
  return createHash('sha256')
    .update(JSON.stringify([FLAGS, VECTORS, tree]))
    .digest('hex')
}

function isFresh(stamp: string): boolean {
  try {
    readFileSync(CORE_WASM)
    readFileSync(CORE_SIMD_WASM)
    for (const name of DIGESTS) readFileSync(outDir + name)
    return readFileSync(STAMP, 'utf8') === stamp
  } catch {
    return false
  }
}

/**
 * Compiles the core to WebAssembly bytes; throws with the compiler's words when it fails.
 * @param more flags besides the usual ones
 */
export async function compileCore(more: readonly string[] = []): Promise<Uint8Array> {
  const { names, tree } = coreSources()
  let words = ''
  const decoder = new TextDecoder()
  const listen = (bytes: Uint8Array | null) => {
    if (bytes) words += decoder.decode(bytes)
  }
  try {
    // Loaded ahead without a word: the package's own first step would print its progress.
    await commands.clang(undefined, {}, { fetchProgress: () => {} })
    const files = await commands.clang(
      [...FLAGS, ...more, ...PORTS.map((name) => `port/${name}`), ...names, '-o', 'core.wasm'],
      tree,
      { stdout: listen, stderr: listen },
    )
    const bytes = files?.['core.wasm']
    if (!(bytes instanceof Uint8Array)) throw new Error('no output file')
    return bytes
  } catch (error) {
    throw new Error(`The core does not compile to WebAssembly.\n${words || error}`)
  }
}

/** Writes both builds unless they are there for the same sources. Returns the path of the plain one. */
export async function buildCore(): Promise<string> {
  const stamp = stampOf(coreSources().tree)
  if (isFresh(stamp)) return CORE_WASM
  const bytes = await compileCore()
  const vectors = await compileCore(VECTORS)
  mkdirSync(outDir, { recursive: true })
  writeFileSync(CORE_WASM, bytes)
  writeFileSync(CORE_SIMD_WASM, vectors)
  for (const [i, file] of [bytes, vectors].entries()) {
    writeFileSync(outDir + DIGESTS[i], createHash('sha256').update(file).digest('hex'))
  }
  writeFileSync(STAMP, stamp)
  return CORE_WASM
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const path = await buildCore()
  console.log(`core.wasm: ${readFileSync(path).length} bytes`)
  console.log(`core-simd.wasm: ${readFileSync(CORE_SIMD_WASM).length} bytes`)
}
