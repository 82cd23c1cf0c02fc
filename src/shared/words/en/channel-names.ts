/** Names of the values of a point, by the bit of the mask that chooses them. */
export const CHANNEL_NAMES = {
  inOrder: [
    'ax',
    'ay',
    'az',
    'gx',
    'gy',
    'gz',
    'vertical acceleration',
    'level acceleration',
    'turn about the vertical',
    'turn about the level',
    'gravity x',
    'gravity y',
    'gravity z',
  ] as const,
}
