import { readFileSync } from 'node:fs'
import { createCore, type WasmCore } from '../shared/core/create-core'
import type { CoreExports } from '../shared/core/wasm-memory'
import { type LightExports, LightPlayer } from '../shared/light/player'
import { buildCore } from './wasm'

let compiled: Promise<WebAssembly.Module> | undefined

async function freshExports(): Promise<unknown> {
  compiled ??= buildCore().then((path) => WebAssembly.compile(readFileSync(path)))
  return (await WebAssembly.instantiate(await compiled, {})).exports
}

/** A fresh core for Node, compiled from the C sources when they have changed. */
export async function loadCoreForNode(): Promise<WasmCore> {
  return createCore((await freshExports()) as CoreExports)
}

/** A fresh player of light effects for Node, from the same module. */
export async function loadLightForNode(): Promise<LightPlayer> {
  return new LightPlayer((await freshExports()) as LightExports)
}
