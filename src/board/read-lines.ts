import { LineSplitter } from '../shared/board/log/line-splitter'
import { fail, ok, type Result } from '../shared/model/result'
import { SERIAL } from '../shared/words/en/serial'
import type { SerialPortLike } from './serial-port'

export interface ReadLinesOptions {
  /** 300 to 4,000,000; must be what the firmware uses. */
  baudRate: number
  /** Whole lines in order, as they come. The first, which may be cut off in front, is left out. */
  onLine: (line: string) => void
  /** Aborting ends the reading and closes the port. */
  signal: AbortSignal
  onOpen?: () => void
}

export interface ReadLinesEnd {
  ended: 'stopped' | 'unplugged'
  /** Framing, parity, break and overrun errors that the port recovered from. */
  lineErrors: number
}

/** Bytes that the port may keep while the page is busy: over two seconds at 115200 baud. */
const BUFFER_BYTES = 32_768

/**
 * Reads a serial port line by line until it is stopped or the device goes. Errors on the line end one
 * stream and the port gives another; what stands between is lost and counted.
 * Codes: 'serial/open' when the port cannot be opened.
 */
export async function readLines(
  port: SerialPortLike,
  { baudRate, onLine, signal, onOpen }: ReadLinesOptions,
): Promise<Result<ReadLinesEnd>> {
  try {
    await port.open({ baudRate, bufferSize: BUFFER_BYTES })
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    return fail('serial/open', SERIAL.notOpened(why))
  }
  onOpen?.()
  let lineErrors = 0
  while (!signal.aborted && port.readable !== null) {
    const clean = await readStream(port.readable, onLine, signal)
    if (clean === 'ended') break
    if (clean === 'error') lineErrors++
  }
  const ended = signal.aborted ? 'stopped' : 'unplugged'
  // A device that is gone cannot be closed; there is nothing left to free then.
  await port.close().catch(() => {})
  return ok({ ended, lineErrors })
}

async function readStream(
  readable: ReadableStream<Uint8Array>,
  onLine: (line: string) => void,
  signal: AbortSignal,
): Promise<'ended' | 'error' | 'stopped'> {
  const reader = readable.getReader()
  const stop = () => void reader.cancel().catch(() => {})
  signal.addEventListener('abort', stop, { once: true })
  const splitter = new LineSplitter()
  const decoder = new TextDecoder('utf-8')
  let whole = false
  try {
    for (;;) {
      const { value, done } = await reader.read()
      if (done) return signal.aborted ? 'stopped' : 'ended'
      for (const line of splitter.push(decoder.decode(value, { stream: true }))) {
        if (whole) onLine(line)
        whole = true
      }
    }
  } catch {
    return 'error'
  } finally {
    signal.removeEventListener('abort', stop)
    reader.releaseLock()
  }
}
