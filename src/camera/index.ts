export { type CodeReader, createCodeReader } from './code-reader'
export { closeCamera, openCamera } from './open-camera'
