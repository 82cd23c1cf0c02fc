import { durationText, plural } from './numbers'

/** Read while takes and background are recorded. */
export const RECORD = {
  gapCount: (gaps: number) => plural('gap', gaps),
  deleteBackgroundOf: (testerCode: string) => `Delete background of ${testerCode}`,
  background: 'Background',
  backgroundLead:
    'Everything that is no gesture: walk, talk, put the prop down, hand it over. How often the recogniser answers in it is how often the prop will answer by mistake.',
  recordingsAndTime: (recordings: number, totalMs: number) =>
    `${plural('recording', recordings)}, ${durationText(totalMs)}`,
  stopAndKeep: 'Stop and keep',
  recordBackground: 'Record background',
  listening: (elapsedS: number, keepGood: boolean) =>
    `Listening, ${elapsedS} s. Rest, move, rest: each movement is ${keepGood ? 'kept when it looks good' : 'offered to you'}.`,
  restAround: (keepGood: boolean) =>
    `Rest before and after each movement; it is cut out and ${keepGood ? 'kept when it looks good' : 'offered to you'}.`,
  stop: 'Stop',
  listenFor: (gesture: string) => `Listen for ${gesture}`,
  letGoAtTheEnd: 'Let go at the end',
  holdWhileYouMove: 'Hold while you move',
  oneTakeOf: (gesture: string) => `one take of ${gesture}`,
  wayOfRecording: 'Way of recording',
  holdAButton: 'Hold a button',
  handsFree: 'Hands-free',
  goodTakes: 'A take that looks good',
  isKept: 'Is kept',
  asksMe: 'Asks me',
  stopListening: 'Stop listening',
  takeTally: (takes: number, gesture: string, own: number, code: string) =>
    `${plural('take', takes)} of ${gesture}, ${own} by ${code}`,
  accelerationLane: (scale: number) => `acceleration ±${scale} m/s²`,
  turningLane: (scale: number) => `turning ±${scale} deg/s`,
  traceDescribed: 'Acceleration and turning of the last seconds',
  /** @param gesture undefined where it was deleted meanwhile */
  offer: (gesture: string | undefined, behind: number) =>
    `Take of ${gesture ?? 'a deleted gesture'}${behind > 0 ? `, ${behind} more waiting` : ''}`,
  drop: 'Drop',
  keep: 'Keep',
  sensorLead:
    'The phone is the prop: hold it as the prop will be held. Its motion sensors start with a tap, and the browser may ask for permission.',
  startSensor: 'Start the sensor',
  starting: 'Starting …',
  trySensorAgain: 'Try the sensor again',
  startSensorAgain: 'Start the sensor again',
  useSimulated: 'Use the simulated phone',
  simulatedHint:
    'The simulated phone is for a desk: it moves by a model, and its takes are marked.',
  signLead:
    'Phones differ in the sign of gravity, and this one has not shown its own yet. Lay it on a table, screen up, and tap.',
  holdStill: 'Hold still …',
  itLiesFlat: 'It lies flat',
  later: 'Later',
  simulatedPhone: 'Simulated phone',
  dragRecords: 'Drag: records while you drag',
  dragMoves: 'Drag to move the phone',
  left: 'Left',
  right: 'Right',
  notNoted: 'Not noted',
  handNotNoted: 'hand not noted',
  leftHand: 'left hand',
  rightHand: 'right hand',
  tester: 'Tester',
  change: 'Change',
  testerCode: "Tester's code",
  codeHint: 'A code such as T01; no names.',
  newTester: 'New tester',
  handLabel: 'Hand that holds the prop',
  done: 'Done',
}
