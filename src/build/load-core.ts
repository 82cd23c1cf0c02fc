import { readFileSync } from 'node:fs'
import { createCore, type WasmCore } from '../shared/core/create-core'
import type { CoreExports } from '../shared/core/wasm-memory'
import { buildCore } from './wasm'

let compiled: Promise<WebAssembly.Module> | undefined

/** A fresh core for Node, compiled from the C sources when they have changed. */
export async function loadCoreForNode(): Promise<WasmCore> {
  compiled ??= buildCore().then((path) => WebAssembly.compile(readFileSync(path)))
  const instance = await WebAssembly.instantiate(await compiled, {})
  return createCore(instance.exports as unknown as CoreExports)
}
