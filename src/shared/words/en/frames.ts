import { plural } from './numbers'
import { countDownText } from './session-words'

/** Read while a session goes from screen to camera. */
export const FRAMES = {
  receiveTitle: 'Take over by camera',
  startTheCamera: 'Start the camera',
  tryCameraAgain: 'Try the camera again',
  cameraPicture: 'What the camera sees',
  receiveLead:
    "On the other phone, show the session as codes. Hold this phone a hand's breadth or two away, so that the whole code is in the picture.",
  progressTitle: 'Codes that came over',
  notOfSession: 'This code is no part of a session.',
  codesOver: (found: number, blocks: number) => `${found} of ${blocks} codes are over.`,
  noCodeSeenYet: 'No code seen yet.',
  fine: 'Fine',
  medium: 'Medium',
  coarse: 'Coarse',
  codeTitle: "Code for the other phone's camera",
  /** @param runMs how long all codes take, one after the other */
  roundsAndTime: (number: number, blocks: number, runMs: number) =>
    `${number <= blocks ? `Code ${number} of ${blocks}` : `Extra code ${number}`}, ${countDownText(runMs)} for all ${plural('code', blocks)}`,
  pauseTheCodes: 'Pause the codes',
  changeTheCodes: 'Change the codes',
  sizeOfTheSquares: 'Size of the squares',
  showHint:
    'The other phone needs as many codes as there are, in any order. If it sees few of them, take coarser squares and turn this screen brighter.',
}
