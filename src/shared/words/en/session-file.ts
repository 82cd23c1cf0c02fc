/** What is wrong with a session that came home, and what to do. */
export const SESSION_FILE = {
  empty: 'The file is empty (0 bytes): send it from the phone once more.',
  otherSession: (file: string) => `${file} is of another session, or has no content id`,
  noSuchGesture: (file: string) => `the gesture of ${file} is none of the session`,
  invalid: (file: string, what: string) =>
    `${file}: ${what}. Send the session from the phone once more.`,
  notJson: 'it is not JSON',
  noSession: (file: string) => `${file} is not that of a Movewright session.`,
  newer: (version: number, newest: number) =>
    `This session file has format version ${version}; this Movewright reads up to ${newest}. Update Movewright and open it again.`,
  unexpected: ({
    place,
    expected,
    found,
  }: {
    place: string | null
    expected: string | null
    found: string
  }) => `${place ?? 'top level'}: expected ${expected ?? 'another value'}, found ${found}`,
  unknown: 'This ZIP holds neither a session nor a library of Movewright: choose another file.',
  noCode: (text: string) => `"${text}" is no tester's code; compare it with the phone's screen.`,
}
