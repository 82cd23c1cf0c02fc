/** Read in the fields of the target: sensor, mounting, microcontroller. */
export const TARGET_FORMS = {
  name: 'Name',
  nameMissing: 'Give the target a name.',
  clock: 'Clock',
  ram: 'RAM',
  flash: 'Flash',
  modelFlash: 'Of it for the model',
  mountingBy: 'Give the mounting by',
  axes: 'Axes',
  matrix: 'Matrix',
  boardAxisAlongProp: 'Board axis along the prop',
  longAxisHint:
    'The long axis is the bold one: it should lie as the prop does, whose roll in the hand is taken out about it.',
  xAlong: 'Board x points along prop',
  yAlong: 'Board y points along prop',
  zAlong: (signed: string) => `Board z then points along prop ${signed}.`,
  enterNine: 'Enter nine numbers, three a row.',
  matrixLabel: 'Board = matrix · prop, row by row',
  matrixHint: 'Rows are board x, y, z in the axes of the prop; a rotation.',
  propHeldLikeThePhone: 'prop, held like the phone',
  boardInTheProp: 'board in the prop',
  boardAlongProp: (axis: string, terms: string) => `board ${axis} along prop ${terms}`,
  enterFromTo: (whole: boolean, min: number, max: number) =>
    `Enter ${whole ? 'a whole number' : 'a number'} from ${min} to ${max}.`,
  withUnit: (label: string, unit: string) => `${label}, ${unit}`,
  sensorFamily: 'Sensor family',
  otherFromItsDataSheet: 'Other, from its data sheet',
  /** @param smallest figures in the smallest range, null where none are known */
  sensitivityHint: (smallest: string | null) =>
    `${smallest === null ? '' : `In its smallest range ${smallest}. `}Sensitivity is the data sheet’s for the range, never worked out from full scale.`,
  accelRange: 'Accelerometer range',
  gyroRange: 'Gyroscope range',
  rate: 'Output data rate',
  fasterThanPhone: 'Faster than a phone reads (60 Hz): takes hold nothing above about 25 Hz.',
  accelRangeFree: 'Accelerometer range ±',
  oneCountIs: 'One count is',
  gyroRangeFree: 'Gyroscope range ±',
}
