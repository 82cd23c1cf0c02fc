import wasmUrl from '../../src/core/build/core.wasm?url'
import { createCore, type WasmCore } from '../../src/shared/core/create-core'
import type { CoreExports } from '../../src/shared/core/wasm-memory'

let compiled: Promise<WebAssembly.Module> | undefined

async function compile(): Promise<WebAssembly.Module> {
  const answer = await fetch(wasmUrl)
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
