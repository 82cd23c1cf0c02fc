import type { FirmwareInput } from '../../shared/firmware/bundle'
import type { Vector } from '../../shared/firmware/vector'
import { encodeModel } from '../../shared/format/model-bytes'
import { channelCount, type RecogniserModel } from '../../shared/model/recogniser-model'
import { createRandom } from '../../shared/statistics/random'

/** Shapes that tell the costs of operations apart. */
export interface Shape {
  length: number
  band: number
  channelMask: number
  templates: number
  features: number
}

export const SHAPES: readonly Shape[] = [
  { length: 32, band: 5, channelMask: 0b111111, templates: 4, features: 0 },
  { length: 16, band: 2, channelMask: 0b111111, templates: 4, features: 0 },
  { length: 32, band: 1, channelMask: 0b111111, templates: 4, features: 0 },
  { length: 48, band: 8, channelMask: 0b111111, templates: 4, features: 0 },
  { length: 32, band: 5, channelMask: 0b000111, templates: 4, features: 0 },
  { length: 24, band: 3, channelMask: 0b111000, templates: 4, features: 0 },
  { length: 32, band: 5, channelMask: 0b000001, templates: 4, features: 0 },
  { length: 32, band: 1, channelMask: 0b001111, templates: 4, features: 0 },
  { length: 24, band: 3, channelMask: 0b1111111111111, templates: 2, features: 0 },
  { length: 32, band: 5, channelMask: 0b1111111000000, templates: 4, features: 0 },
  { length: 32, band: 5, channelMask: 0b111111, templates: 4, features: 24 },
  { length: 16, band: 5, channelMask: 0b111111, templates: 4, features: 24 },
  { length: 48, band: 5, channelMask: 0b111111, templates: 4, features: 24 },
]

/** A model of a shape, with the other settings of a trained one and values from a seed. */
export function shapedModel(trained: RecogniserModel, shape: Shape): RecogniserModel {
  const { length, band, channelMask, features } = shape
  const random = createRandom(1)
  const normaliser = { ...trained.normaliser, length, channelMask }
  const values = length * channelCount(normaliser)
  const template = () => Int8Array.from({ length: values }, () => random.integer(128) - 64)
  const names = ['one', 'two']
  const gestures = names.map((name) => ({
    id: name,
    name,
    threshold: 1000,
    templates: Array.from({ length: shape.templates / names.length }, template),
    templateTakeIds: [],
  }))
  return { ...trained, normaliser, band, gestures, kernel: features === 0 ? null : kernelOf(shape) }
}

/** Kernels and dilations in turn, each over two channels, as training picks them. */
function kernelOf({ features, length }: Shape): RecogniserModel['kernel'] {
  const random = createRandom(2)
  return {
    pools: 2,
    bases: [0, 0],
    logWeight: 1,
    features: Array.from({ length: features }, (_, index) => ({
      kernel: (index * 7) % 84,
      differences: index % 2 === 1,
      dilation: 1 + (index % Math.min(3, length - 1)),
      channels: 0b11 << (index % 4),
      bias: random.integer(40) - 20,
      weights: Int8Array.from({ length: 4 }, () => random.integer(11) - 5),
    })),
  }
}

const STILL: Vector = {
  name: 'still',
  why: 'Nothing moves.',
  from: 'four samples of nought',
  steps: [{ samples: new Int16Array(24) }],
  log: 'init 0\nend 4\n',
}

/** The firmware of a model that was not trained, only to be measured. */
export function shapedFirmware(input: FirmwareInput, shape: Shape): FirmwareInput {
  const model = shapedModel(input.trained.model, shape)
  const gestures = model.gestures.map(({ id, name }, index) => ({
    ...(input.library.gestures[index] ?? input.library.gestures[0]!),
    id,
    name,
  }))
  return {
    ...input,
    library: { ...input.library, gestures },
    trained: { ...input.trained, model, bytes: encodeModel(model) },
    vectors: [STILL],
  }
}
