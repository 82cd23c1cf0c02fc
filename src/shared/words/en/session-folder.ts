/** Why a folder of sessions on a server cannot be used, and what to do. */
export const SESSION_FOLDER = {
  mixed:
    'This page is secure (https) and the folder is not (http), so browsers refuse to mix them: give the folder an https address.',
  otherOrigin: (ownOrigin: string, folderOrigin: string) =>
    `This copy of the app may only talk to ${ownOrigin}: put the folder on the same host, or build the app with MOVEWRIGHT_CONNECT=${folderOrigin}.`,
  noAddress: (text: string) =>
    `"${text}" is no address of a folder: write one such as https://files.example.org/lantern/, without name and password.`,
  notWhole:
    'It is not whole: a phone is still sending it, was cut off, or it was altered. Fetch again in a minute, or have the session sent again.',
  arrivedPartly: (name: string) =>
    `${name} did not arrive whole in the folder: send it again, and check the folder’s address if it stays so.`,
  tooLarge: 'It is larger than any session may be, so it was not fetched.',
  notGiven:
    'The server does not give it to this account: ask the owner of the folder for the right.',
  gone: 'It was taken out of the folder in the meantime.',
  password: 'The folder asks for a name and a password, or does not know these: type them again.',
  notWritable:
    'The folder does not let this account write: ask its owner for the right to add files.',
  notReadable:
    'The server does not show this folder: its address is wrong, or the account may not read it.',
  missing: 'There is no such folder on the server: check its address.',
  noWebdav: 'The server knows no WebDAV at this address: check the address.',
  locked: 'Somebody has locked the file on the server: try again later.',
  full: 'The disk of the server is full: ask its owner to make room.',
  answered: (status: number) =>
    `The server answered with ${status}: try again, and ask its owner if it stays so.`,
  late: (host: string) => `${host} did not answer in time: go nearer to the network and try again.`,
  notReached: (host: string) =>
    `${host} could not be reached: there is no network, the address is wrong, or the server does not allow this page (CORS).`,
}
