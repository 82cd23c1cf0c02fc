import { channelCount, type RecogniserModel } from '../model/recogniser-model'

/** Channels that are axes of a sample; those above are levelled. */
const AXES_MASK = 0b111111

/** Numbers of things done for one decision, at most: no template is given up early. */
export interface DecisionOperations {
  /** Rows of the segment that are read and turned. */
  rows: number
  /** Rows of which gravity is carried along for levelled channels: all or none. */
  levelledRows: number
  /** Values of the normalised segment. */
  points: number
  /** Comparisons with a template. */
  templates: number
  /** Rows of the warping matrices, over all templates. */
  warpRows: number
  /** Cells of them within the band. */
  warpCells: number
  /** Cells times channels. */
  warpValues: number
  /** Kernel features. */
  features: number
  /** Features times points. */
  featurePoints: number
  /** Six channels, which have a loop of their own. */
  six: boolean
}

/**
 * Operations of a decision on a segment of so many samples, by default the longest that the model
 * compares.
 */
export function decisionOperations(
  model: RecogniserModel,
  rows = model.segmenter.maxLength - 1,
): DecisionOperations {
  const { normaliser, band, gestures, kernel } = model
  const { length } = normaliser
  const channels = channelCount(normaliser)
  const templates = gestures.reduce((sum, gesture) => sum + gesture.templates.length, 0)
  const features = kernel?.features.length ?? 0
  const warpCells = templates * bandCells(length, band)
  return {
    rows,
    levelledRows: normaliser.channelMask > AXES_MASK ? rows : 0,
    points: length * channels,
    templates,
    warpRows: templates * length,
    warpCells,
    warpValues: warpCells * channels,
    features,
    featurePoints: features * length,
    six: channels === 6,
  }
}

/** Cells of a square matrix with |i - j| <= band. */
export function bandCells(length: number, band: number): number {
  return length * (2 * band + 1) - band * (band + 1)
}
