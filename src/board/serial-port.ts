import { fail, ok, type Result } from '../shared/model/result'
import { SERIAL } from '../shared/words/en/serial'

/** The part of a Web Serial port (WICG Serial API) that is used here. */
export interface SerialPortLike {
  open(options: { baudRate: number; bufferSize?: number }): Promise<void>
  close(): Promise<void>
  /** A fresh stream after each error that can be recovered from; null once the device is gone. */
  readonly readable: ReadableStream<Uint8Array> | null
}

interface SerialLike {
  requestPort(): Promise<SerialPortLike>
}

function serialOf(): SerialLike | null {
  const browser = globalThis.navigator as (Navigator & { serial?: SerialLike }) | undefined
  return browser?.serial ?? null
}

/** Whether this browser can read a serial port; at present those built on Chromium, on a desk. */
export function hasSerial(): boolean {
  return serialOf() !== null
}

/**
 * Asks for a port; must be called from a tap. Codes: 'serial/none' without the interface,
 * 'serial/not-chosen' when nothing was chosen, 'serial/denied' where a policy forbids it.
 */
export async function choosePort(): Promise<Result<SerialPortLike>> {
  const serial = serialOf()
  if (serial === null) {
    return fail('serial/none', SERIAL.noSerial)
  }
  try {
    return ok(await serial.requestPort())
  } catch (error) {
    const denied = error instanceof DOMException && error.name === 'SecurityError'
    return denied
      ? fail('serial/denied', SERIAL.insecure)
      : fail('serial/not-chosen', SERIAL.noneChosen)
  }
}
