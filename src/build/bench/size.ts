import { readFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'
import type { Core } from '../../shared/core/core'
import { DEMO_SEED, generateDemoLibrary } from '../../shared/demo/demo-library'
import { trainModel } from '../../shared/training/train-model'
import { buildCore } from '../wasm'
import type { BenchResult } from './figure'

/** Bytes of the core as the page loads it, and of the demo's model. */
export async function benchSize(core: Core): Promise<BenchResult> {
  const wasm = readFileSync(await buildCore())
  const trained = trainModel(core, await generateDemoLibrary(DEMO_SEED))
  if (!trained.ok) throw new Error(trained.message)
  const bytes = (figure: string, value: number) => ({ figure, value, unit: 'B' })
  return {
    figures: [
      bytes('core_wasm_bytes', wasm.length),
      bytes('core_wasm_gzip_bytes', gzipSync(wasm, { level: 9 }).length),
      bytes('demo_model_bytes', trained.value.bytes.length),
      bytes('demo_ram_bytes_estimated', trained.value.ramBytes),
    ],
    skipped: [],
  }
}
