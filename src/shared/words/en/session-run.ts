import { plural } from './numbers'

/** What a tester reads while a session runs and at its end. */
export const SESSION_RUN = {
  label: 'Session',
  movementsDone: 'Movements done',
  doneOf: (done: number, total: number) => `${done} of ${total} done`,
  left: (minutes: string) => `${minutes} left`,
  noSession: 'No session',
  buttons: {
    start: 'Start',
    goOn: 'Go on',
    tryAgain: 'Try again',
    goOnNow: 'Go on now',
    numberOf: (number: number, of: number) => `${number} of ${of}`,
    pause: 'Pause',
    keep: 'Keep it',
    again: 'Again',
    enough: 'Enough',
    simulate: 'Use the simulated phone',
    startSensor: 'Start the sensor again',
    undo: 'Undo the last',
    skip: 'Skip this',
    finish: 'Finish',
  },
  finish: {
    title: 'Thank you',
    packing: 'Packing …',
    handOver: 'Hand it over',
    kept: (kept: number, total: number) => `${kept} of ${plural('movement', total)} were kept.`,
    code: {
      before: 'Your code is',
      after: '. Whoever has it can have your takes deleted, at any time; nobody knows whose it is.',
    },
    forCamera: 'For the other camera',
    back: 'Back',
    showToCamera: (duration: string) => `Show it to another phone's camera, ${duration}`,
    nextTester: 'Next tester',
    remove: 'Delete this session',
  },
}
