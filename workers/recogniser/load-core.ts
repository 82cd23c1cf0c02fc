import plainDigest from '../../src/core/build/core.sha256?raw'
import plainUrl from '../../src/core/build/core.wasm?url'
import simdDigest from '../../src/core/build/core-simd.sha256?raw'
import simdUrl from '../../src/core/build/core-simd.wasm?url'
import { createCore, type WasmCore } from '../../src/shared/core/create-core'
import { soundProgram } from '../../src/shared/core/program'
import { SIMD_PROBE } from '../../src/shared/core/simd-probe'
import type { CoreExports } from '../../src/shared/core/wasm-memory'

let compiled: Promise<WebAssembly.Module> | undefined

async function compile(): Promise<WebAssembly.Module> {
  // Both give the same integers; only the one that this browser runs best is fetched.
  const [url, digest] = WebAssembly.validate(SIMD_PROBE)
    ? [simdUrl, simdDigest]
    : [plainUrl, plainDigest]
  // Not compileStreaming: the bytes are looked at before they run, and servers on a desk often send
  // another type than application/wasm.
  return WebAssembly.compile(await soundProgram(fetch(url), digest))
}

/** A fresh core; the module is fetched and compiled once. */
export async function loadCore(): Promise<WasmCore> {
  compiled ??= compile().catch((error: unknown) => {
    compiled = undefined
    throw error
  })
  const instance = await WebAssembly.instantiate(await compiled, {})
  return createCore(instance.exports as unknown as CoreExports)
}
