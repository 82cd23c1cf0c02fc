import { expect, it } from 'vitest'
import { compileCore } from '../../src/build/wasm'

it('compiles the core to the same bytes every time', async () => {
  const first = await compileCore()
  const second = await compileCore()
  expect(Buffer.from(first).equals(Buffer.from(second))).toBe(true)
  // Nothing but the memory it brings itself: no import can make two runs differ.
  expect(WebAssembly.Module.imports(new WebAssembly.Module(first as BufferSource))).toEqual([])
})
