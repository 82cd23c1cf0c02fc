/** Why two logs do not tell how a board is mounted. */
export const MOUNTING_TROUBLE = {
  tooLong: (minutes: number) =>
    `A log of ${minutes} minutes is too long to be set beside another: cut it to the same five minutes of both.`,
  otherMotion:
    'The two logs do not show the same motion: record both at the same time, with some quick turns in them.',
  tooShort: 'Both logs need a few seconds: record half a minute of turning about every axis.',
  tooLittleMotion:
    'The two logs share too little motion: turn the prop slowly about every axis, for half a minute.',
  noRotation: (share: number) =>
    `${(100 * share).toFixed(0)} % of the motion fits no rotation: the phone was loose, or the logs are not of the same moment, or a scale is wrong.`,
  mirrored:
    'The best match mirrors the board, which no mounting can: an axis sign is flipped. Run the board check.',
  oneAxis: (axis: string) =>
    `Nearly all turning was about one axis (mostly the board’s ${axis}), so the turn about that axis is not known: turn the prop about its other axes as well.`,
}
