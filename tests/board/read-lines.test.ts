import { describe, expect, it } from 'vitest'
import { readLines, type SerialPortLike } from '../../src/board'

const bytes = (text: string) => new TextEncoder().encode(text)

/** A port over streams in the order given; an Error ends a stream as a line error does. */
function portOf(...streams: (Uint8Array | Error)[][]): SerialPortLike & { closed: boolean } {
  let opened: ReadableStream<Uint8Array> | null = null
  let next = 0
  const stream = (pieces: (Uint8Array | Error)[]) =>
    new ReadableStream<Uint8Array>({
      pull(controller) {
        const piece = pieces.shift()
        if (piece === undefined) controller.close()
        else if (piece instanceof Error) {
          opened = next < streams.length ? stream(streams[next++]!) : null
          controller.error(piece)
        } else controller.enqueue(piece)
      },
    })
  return {
    closed: false,
    async open() {
      opened = stream(streams[next++]!)
    },
    async close() {
      this.closed = true
    },
    get readable() {
      return opened
    },
  }
}

async function linesOf(port: SerialPortLike) {
  const lines: string[] = []
  const result = await readLines(port, {
    baudRate: 115_200,
    onLine: (line) => lines.push(line),
    signal: new AbortController().signal,
  })
  return { lines, result }
}

describe('lines of a serial port', () => {
  it('leaves out the first line, which may be cut off, and joins pieces', async () => {
    const port = portOf([bytes('23,4\r\n1,2'), bytes(',3\r'), bytes('\n4,5,6\r\n7,')])
    const { lines, result } = await linesOf(port)
    expect(lines).toEqual(['1,2,3', '4,5,6'])
    expect(result).toEqual({ ok: true, value: { ended: 'unplugged', lineErrors: 0 } })
    expect(port.closed).toBe(true)
  })

  it('goes on after a framing error with the next whole line', async () => {
    const port = portOf(
      [bytes('x\n1,2,3\n4,'), new DOMException('Framing', 'FramingError')],
      [bytes('6\n7,8,9\n'), new DOMException('lost', 'NetworkError')],
    )
    const { lines, result } = await linesOf(port)
    expect(lines).toEqual(['1,2,3', '7,8,9'])
    expect(result).toMatchObject({ value: { ended: 'unplugged', lineErrors: 2 } })
  })

  it('survives bytes that are no text, as a wrong baud rate gives', async () => {
    const noise = Uint8Array.from({ length: 5000 }, (_, i) => (i * 197 + 128) & 0xff)
    const { result } = await linesOf(portOf([noise, bytes('\n1,2,3\n')]))
    expect(result.ok).toBe(true)
  })

  it('stops when asked and closes the port', async () => {
    const abort = new AbortController()
    const port = portOf([])
    const endless: SerialPortLike = {
      open: port.open,
      close: async () => {
        port.closed = true
      },
      readable: new ReadableStream({
        pull: (controller) => controller.enqueue(bytes('1,2,3\n')),
      }),
    }
    let count = 0
    const result = await readLines(endless, {
      baudRate: 9600,
      signal: abort.signal,
      onLine: () => {
        count++
        if (count === 10) abort.abort()
      },
    })
    expect(result).toEqual({ ok: true, value: { ended: 'stopped', lineErrors: 0 } })
    expect(port.closed).toBe(true)
  })

  it('says what to do when the port cannot be opened', async () => {
    const port: SerialPortLike = {
      open: () => Promise.reject(new DOMException('Failed to open serial port.', 'NetworkError')),
      close: async () => {},
      readable: null,
    }
    const { result } = await linesOf(port)
    expect(result).toMatchObject({ ok: false, code: 'serial/open' })
  })
})
