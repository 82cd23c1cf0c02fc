import { plural } from './numbers'

/** Testers side by side: their takes, those far from the others, groups, and a withdrawal. */
export const COLLECT_TESTERS = {
  title: 'Testers',
  compare: 'Compare the takes',
  compareAgain: 'Compare again',
  changed: 'Takes have changed since they were compared.',
  noTakes: (gestures: number) => `No takes yet: ${plural('gesture', gestures)}, no testers.`,
  groups: {
    byHand: 'By hand',
    hint: 'Distance to the others of the gesture: 1 is usual; the median of the takes that were compared. Far below or above 1 means a group moves unlike the rest, or its phones read otherwise.',
    byRate: 'By rate of the phone',
    byPhone: 'By phone',
    hand: 'Hand',
    rate: 'Rate',
    phone: 'Phone',
    takesBy: (what: string) => `Takes by ${what.toLowerCase()}`,
    testers: 'Testers',
    takes: 'Takes',
    distance: 'Distance',
    far: 'Far',
    notCutOnce: 'Not cut once',
    noData: 'no data',
    compared: (n: number) => `n = ${n}`,
  },
  far: {
    none: (n: number) => `No take lies far from the others of its gesture (n = ${n}).`,
    title: (takes: number) => `${plural('take', takes)} far from the others`,
    hint: (n: number) =>
      `Measured by the recogniser's own distance to the nearest takes of other testers; n = ${n}. A far take may be a mistake, or a manner that only one tester has: look before you drop it.`,
    why: (tester: string, why: string) => `by ${tester}: ${why}`,
    look: 'Look',
    keep: 'Keep',
    itIs: (gesture: string) => `It is ${gesture}`,
    drop: 'Drop',
  },
  table: {
    legend: 'Takes of each tester; L marks left-handed ones.',
    legendCompared:
      'Takes of each tester; L marks left-handed ones, a count behind + those far from the others.',
    label: 'Takes of each tester and gesture',
    tester: 'Tester',
    withLeft: 'with left-handed takes',
    left: 'L',
  },
  withdraw: {
    title: 'A tester withdraws',
    hint: 'Every recording and session of the tester goes from this library, and no file brings them back; libraries that this one is brought into lose them too. It can be undone in this visit; a day later nothing is left to undo.',
    code: "Tester's code",
    chooseCode: 'Choose a code',
    withdraw: (code: string) => `Withdraw ${code}`,
  },
}
