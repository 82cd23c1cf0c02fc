import plainUrl from '../../src/core/build/core.wasm?url'
import simdUrl from '../../src/core/build/core-simd.wasm?url'
import { createCore, type WasmCore } from '../../src/shared/core/create-core'
import { SIMD_PROBE } from '../../src/shared/core/simd-probe'
import type { CoreExports } from '../../src/shared/core/wasm-memory'

let compiled: Promise<WebAssembly.Module> | undefined

async function compile(): Promise<WebAssembly.Module> {
  // Both give the same integers; only the one that this browser runs best is fetched.
  const answer = await fetch(WebAssembly.validate(SIMD_PROBE) ? simdUrl : plainUrl)
  if (!answer.ok) throw new Error(`the recogniser's program was not found (${answer.status})`)
  // Not compileStreaming: servers on a desk often send another type than application/wasm.
  return WebAssembly.compile(await answer.arrayBuffer())
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
