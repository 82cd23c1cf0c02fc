import type { FindingWords } from '../../board/check/finding'
import type { MisreadAxis } from '../../board/check/poses'

const listed = (axes: readonly MisreadAxis[]) =>
  axes.map(({ axis, reads }) => `${axis} reads ${reads}`).join(', ')

/** What the board check says of exchanged and mirrored axes. */
export const BOARD_AXES = {
  facesUnclear: {
    title: 'The six faces do not fit together',
    seen: 'The six poses do not stand at right angles, or two of them are the same.',
    causes: ['A pose was mixed up or logged while the board moved.', 'One axis hardly answers.'],
    next: ['Log the six faces again, against a square block.', 'Watch which axis changes least.'],
  } satisfies FindingWords,
  mirrored: (axes: readonly MisreadAxis[]): FindingWords => ({
    title: 'An axis sign is flipped',
    seen: `The axes form a left-handed set (determinant −1)${axes.length === 0 ? '' : `: ${listed(axes)}`}. No way of mounting does that.`,
    causes: [
      'One axis is negated in the driver, or two are exchanged without a sign.',
      'The axes were read off the board’s bottom side.',
      'A library of the sensor converts to another convention.',
    ],
    next: [
      'Print the registers as they come, without any exchange, and log the faces again.',
      'Compare the arrows of the data sheet with pin 1 on the board.',
    ],
  }),
  turned: (axes: readonly MisreadAxis[]): FindingWords => ({
    title: 'The axes are exchanged',
    seen: `The axes are turned to what the poses said: ${listed(axes)}. Both sensors agree, and handedness is right.`,
    causes: [
      'The part is soldered or drawn at another angle than was thought.',
      'The driver turns the axes to the board’s.',
      'The poses were named by the board’s edges and not by the sensor’s arrows.',
    ],
    next: [
      'Find pin 1 with a magnifier and compare it with the drawing.',
      'If it is meant, take it as the mounting: exchange the axes on Prop.',
    ],
  }),
  differ: (axes: readonly MisreadAxis[]): FindingWords => ({
    title: 'Gyroscope and accelerometer do not share their axes',
    seen: `Turns of gravity and readings of the gyroscope belong to different axes or signs: ${listed(axes) || 'all signs'}.`,
    causes: [
      'The driver exchanges or negates axes of one sensor only.',
      'Registers of the two sensors are read in different orders.',
      'The part has two dies whose axes differ; the data sheet says so.',
    ],
    next: [
      'Turn the board slowly about z, anticlockwise from above: z of the gyroscope must be positive.',
      'Compare the two register maps line by line.',
    ],
  }),
}
