import type { MatcherWish } from '../../model/library'
import type { MatcherKind } from '../../model/recogniser-model'

/** What each choice of matcher means for the designer. */
export const MATCHER_WORDS: Record<MatcherWish, { name: string; sentence: string }> = {
  template: {
    name: 'Templates',
    sentence:
      'Stored takes, warped in time. Works from 3 to 5 takes a gesture, trains fast, and each answer can be traced to a take.',
  },
  kernel: {
    name: 'Kernels',
    sentence:
      'Counts of many small features, weighed together. Better with many takes or testers; takes all the flash the model may have, and longer to train.',
  },
  auto: {
    name: 'Auto',
    sentence:
      'Tries templates, kernels and both, keeps what does best for testers left out, and says under Model what it chose. Training takes longest; measuring on Proof repeats it in every round.',
  },
}

/** What a model compares with. */
export const KIND_WORDS: Record<MatcherKind, string> = {
  template: 'templates',
  kernel: 'kernel features',
  both: 'templates and kernels',
}
