/** Why no serial port is read. */
export const SERIAL = {
  notOpened: (why: string) =>
    `The port cannot be opened (${why}): close other programs that use it, or plug the board in again.`,
  noSerial: 'This browser cannot read a serial port: open a log as a file or paste it instead.',
  insecure: 'This page may not use serial ports here: open it over HTTPS.',
  noneChosen: 'No port was chosen. Plug the board in and choose its port.',
}
