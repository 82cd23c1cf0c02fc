import { readFileSync } from 'node:fs'
import { createCore, type WasmCore } from '../shared/core/create-core'
import { SIMD_PROBE } from '../shared/core/simd-probe'
import type { CoreExports } from '../shared/core/wasm-memory'
import { type LightExports, LightPlayer } from '../shared/light/player'
import { buildCore, CORE_SIMD_WASM, CORE_WASM } from './wasm'

/** 'simd' has the core's inner loops in vectors, 'plain' as C99 has them: the same integers. */
export type CoreBuild = 'simd' | 'plain'

const PATHS = { simd: CORE_SIMD_WASM, plain: CORE_WASM }
const compiled = new Map<CoreBuild, Promise<WebAssembly.Module>>()

async function freshExports(build: CoreBuild): Promise<unknown> {
  const module =
    compiled.get(build) ??
    buildCore().then(() => WebAssembly.compile(readFileSync(PATHS[build]) as BufferSource))
  compiled.set(build, module)
  return (await WebAssembly.instantiate(await module, {})).exports
}

/** A fresh core for Node, compiled from the C sources when they have changed. */
export async function loadCoreForNode(
  build: CoreBuild = WebAssembly.validate(SIMD_PROBE) ? 'simd' : 'plain',
): Promise<WasmCore> {
  return createCore((await freshExports(build)) as CoreExports)
}

/** A fresh player of light effects for Node, from the same module. */
export async function loadLightForNode(): Promise<LightPlayer> {
  return new LightPlayer((await freshExports('plain')) as LightExports)
}
