/** Why nothing can be measured, compared or decided from these takes. */
export const MEASURE_TROUBLE = {
  otherHoldout:
    'One was measured with testers held out and the other with takes: measure both alike.',
  noneInBoth:
    'No take was held out in both: compare models of one library, or keep old takes when you add new ones.',
  nothingToTellApart:
    'Fewer than two gestures have takes, so there is nothing to tell apart: record takes of a second gesture.',
  nothingToConfuse:
    'Fewer than two gestures have takes, so no sensor can confuse them: record takes of a second gesture.',
  noTakes: 'There are no takes to evaluate: record some of each gesture.',
  oneTester:
    'All takes are by one tester, so no tester can be held out: hold out takes, or record another tester.',
  oneTakeEach: 'Every gesture has one take: record more to hold some out.',
  noOtherTester: (gesture: string) =>
    `No other tester performed ${gesture}, so there is nothing to learn it from.`,
  onlyTake: (gesture: string) =>
    `This is the only take of ${gesture}, so there is nothing to learn it from.`,
  part: (number: number, of: number) => `part ${number} of ${of}`,
  stopped: 'Stopped before the end.',
  modelCannotRun: (reason: string) => `The model cannot be run: ${reason}. Train it again.`,
}
