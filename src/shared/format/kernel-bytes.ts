import type { KernelFeature, ModelKernel } from '../model/recogniser-model'
import type { ByteReader } from './byte-reader'

/** MVW_FEATURE_BYTES: a feature without its weights. */
export const FEATURE_BYTES = 6
const BASE_BYTES = 4
const DIFFERENCES = 0x80

/** What makes a feature, weights aside. */
export type FeatureShape = Omit<KernelFeature, 'weights'>

/** Bytes of the table `mvw_model.kernel`. */
export function kernelByteLength(kernel: ModelKernel | null, gestureCount: number): number {
  if (kernel === null) return 0
  const record = FEATURE_BYTES + kernel.pools * gestureCount
  return BASE_BYTES * gestureCount + kernel.features.length * record
}

/** Features as the core reads them, MVW_FEATURE_BYTES each. */
export function featureRecords(features: readonly FeatureShape[]): Uint8Array {
  const bytes = new Uint8Array(features.length * FEATURE_BYTES)
  const view = new DataView(bytes.buffer)
  for (const [index, feature] of features.entries())
    putFeature(view, index * FEATURE_BYTES, feature)
  return bytes
}

function putFeature(view: DataView, at: number, feature: FeatureShape): void {
  view.setUint8(at, feature.kernel | (feature.differences ? DIFFERENCES : 0))
  view.setUint8(at + 1, feature.dilation)
  view.setUint16(at + 2, feature.channels, true)
  view.setInt16(at + 4, feature.bias, true)
}

/** The whole table. */
export function kernelTable(kernel: ModelKernel, gestureCount: number): Uint8Array {
  const bytes = new Uint8Array(kernelByteLength(kernel, gestureCount))
  const view = new DataView(bytes.buffer)
  for (const [gesture, base] of kernel.bases.entries()) view.setInt32(gesture * 4, base, true)
  let at = BASE_BYTES * gestureCount
  for (const feature of kernel.features) {
    putFeature(view, at, feature)
    bytes.set(new Uint8Array(feature.weights.slice().buffer), at + FEATURE_BYTES)
    at += FEATURE_BYTES + feature.weights.length
  }
  return bytes
}

/** Reads the table from where the reader stands; null for a model without features. */
export function readKernel(
  reader: ByteReader,
  { features: count, pools, logWeight }: { features: number; pools: number; logWeight: number },
  gestureCount: number,
): ModelKernel | null {
  if (count === 0) return null
  const bases = Array.from({ length: gestureCount }, () => reader.u32() | 0)
  const features = Array.from({ length: count }, (): KernelFeature => {
    const kernel = reader.u8()
    return {
      kernel: kernel & ~DIFFERENCES,
      differences: (kernel & DIFFERENCES) !== 0,
      dilation: reader.u8(),
      channels: reader.u16(),
      bias: (reader.u16() << 16) >> 16,
      weights: Int8Array.from({ length: pools * gestureCount }, () => reader.u8()),
    }
  })
  return { pools: pools as 2 | 3, logWeight, bases, features }
}
