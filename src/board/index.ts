export { type ReadLinesEnd, type ReadLinesOptions, readLines } from './read-lines'
export { choosePort, hasSerial, type SerialPortLike } from './serial-port'
