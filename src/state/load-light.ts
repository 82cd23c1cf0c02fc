import plainDigest from '../core/build/core.sha256?raw'
import plainUrl from '../core/build/core.wasm?url'
import simdDigest from '../core/build/core-simd.sha256?raw'
import simdUrl from '../core/build/core-simd.wasm?url'
import { soundProgram } from '../shared/core/program'
import { SIMD_PROBE } from '../shared/core/simd-probe'
import { type LightExports, LightPlayer } from '../shared/light/player'

let compiled: Promise<WebAssembly.Module> | undefined

async function compile(): Promise<WebAssembly.Module> {
  // The file that the recogniser takes too, so that one is fetched.
  const [url, digest] = WebAssembly.validate(SIMD_PROBE)
    ? [simdUrl, simdDigest]
    : [plainUrl, plainDigest]
  return WebAssembly.compile(await soundProgram(fetch(url), digest))
}

/** A fresh player, the board's own C; the module is fetched and compiled once. */
export async function loadLight(): Promise<LightPlayer> {
  compiled ??= compile().catch((error: unknown) => {
    compiled = undefined
    throw error
  })
  const instance = await WebAssembly.instantiate(await compiled, {})
  return new LightPlayer(instance.exports as unknown as LightExports)
}
