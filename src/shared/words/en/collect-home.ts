import { plural } from './numbers'

/** Bringing sessions of testers home: by file, camera or shared folder, and what is to be decided. */
export const COLLECT_HOME = {
  bring: {
    title: 'Bring home',
    hint: 'Session files and library files, several at once.',
    chooseFiles: 'Choose session files',
    decide: (labels: number) => `Decide ${plural('label', labels)} first`,
    store: (recordings: number) => `Store ${plural('recording', recordings)}`,
    storeChanges: 'Store the changes',
    storeNothing: 'Store nothing',
    done: 'Done',
    notStored: (trouble: string) => `${trouble} Nothing was stored; the files are still here.`,
    found: (found: string, library: string) => `${found} For the library ${library}.`,
    fileTrouble: (file: string, trouble: string | null) => `${file}: ${trouble}`,
    otherFiles: (count: number) => `The other ${plural('file', count)} can be stored all the same.`,
    willGo: (count: number) => `${plural('recording', count)} here will go`,
    goneThere: (testers: readonly string[]) =>
      `They were withdrawn or dropped where the file comes from. Testers: ${testers.join(', ')}.`,
    relabelled: (count: number) =>
      `${plural('recording', count)} here will take over labels that were changed later elsewhere.`,
    shownAs: (code: string, shownAs: string) => `${code} is shown as ${shownAs}`,
    keptApart: (codes: readonly string[]) =>
      `Two phones gave one code to two testers, who are kept apart: ${codes.join(', ')}.`,
  },
  ways: {
    byCamera: 'the session by camera',
    whole: (bytes: number) => `The session is here whole: ${plural('byte', bytes)}.`,
    seeIt: 'See what it brings',
    sharedFiles: 'Shared files',
    noFile: 'No file came with it. Choose it here instead.',
    back: 'Back to collecting',
  },
  decide: {
    bothSides: (labels: number) => `${plural('label', labels)} changed on both sides`,
    stillOpen: (open: number) =>
      `${open === 0 ? 'All are decided.' : `${open} not decided yet.`} The first of each is what counts here.`,
    allHere: 'All as here',
    allThere: 'All as in the files',
    ofTake: (label: string, when: string, tester: string) =>
      `${label} of the take of ${when} UTC by ${tester}`,
    strangers: 'Gestures not in this library',
    stranger: (gesture: string, takes: number) => `${gesture}, ${plural('take', takes)}`,
    addAsNew: (gesture: string) => `Add ${gesture} as a new gesture`,
    sharedCodes: 'Codes that both sides use',
    sharedCode: (code: string) => `Tester ${code} here and in the file`,
    twoPeople: 'Two people',
    onePerson: 'One person',
  },
  folder: {
    title: 'Shared folder',
    off: 'Off. For teams with a server of their own: sessions go to a WebDAV folder and are fetched from it. Nothing else is sent, and only when you tap.',
    use: 'Use a shared folder',
    address: 'Address of the folder',
    addressHint: (origin: string) => `Such as ${origin}/team/`,
    user: 'Name, if it asks for one',
    password: 'Password, kept for this visit only',
    useIt: 'Use it',
    cancel: 'Cancel',
    nothingNew: 'Nothing new in it.',
    unread: (files: number) =>
      `Nothing new in it that could be read: ${plural('file', files)} could not be.`,
    fetch: 'Fetch new sessions',
    send: "Send this phone's sessions",
    turnOff: 'Turn off',
    noSession: 'No finished session on this phone.',
    stored: (sent: number, there: number) => `${sent} sent, ${there} there already.`,
    sent: 'Sent. It is in the shared folder.',
    asFileInstead: (trouble: string) => `${trouble} Hand the session over as a file instead.`,
    sending: 'Sending …',
    sendIt: 'Send it to the shared folder',
  },
}
