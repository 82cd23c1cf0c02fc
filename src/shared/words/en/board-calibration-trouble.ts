/** Why no calibration can be made of what was logged. */
export const CALIBRATION_TROUBLE = {
  facesMissing: 'A calibration needs all six faces: log those that are missing.',
  noRest: 'The bias of the gyroscope needs rest: log the first step.',
  axesExchanged:
    'The faces do not read along their own axes: see the board check first, a calibration would hide it.',
  gravityOff: (gravityG: number) =>
    `Gravity reads ${gravityG.toPrecision(3)} g: a range or unit is wrong, see the board check first.`,
  facesAlike: 'The six faces are not distinct: log them again.',
}
