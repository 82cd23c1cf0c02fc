import plainUrl from '../core/build/core.wasm?url'
import simdUrl from '../core/build/core-simd.wasm?url'
import { SIMD_PROBE } from '../shared/core/simd-probe'
import { type LightExports, LightPlayer } from '../shared/light/player'

let compiled: Promise<WebAssembly.Module> | undefined

async function compile(): Promise<WebAssembly.Module> {
  // The file that the recogniser takes too, so that one is fetched.
  const answer = await fetch(WebAssembly.validate(SIMD_PROBE) ? simdUrl : plainUrl)
  if (!answer.ok) throw new Error(`the player of the light was not found (${answer.status})`)
  // Not compileStreaming: servers on a desk often send another type than application/wasm.
  return WebAssembly.compile(await answer.arrayBuffer())
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
