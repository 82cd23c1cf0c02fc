import { crc32 } from '../../../src/shared/format/crc32'

const CHUNK = 32

/** A line as the loader takes it, with its check. */
export function checkedLine(text: string): string {
  const crc = crc32(new TextEncoder().encode(text))
  return `${text}*${crc.toString(16).padStart(8, '0')}`
}

/** Lines that bring model bytes to a loader, as `make model-lines` writes them. */
export function loaderLines(bytes: Uint8Array, said = bytes.length): string[] {
  const lines = [checkedLine(`model ${said}`)]
  for (let at = 0; at < bytes.length; at += CHUNK) {
    const hex = Buffer.from(bytes.subarray(at, at + CHUNK)).toString('hex')
    lines.push(checkedLine(`at ${at} ${hex}`))
  }
  return [...lines, checkedLine('end')]
}
