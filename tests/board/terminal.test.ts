import { type ChildProcess, spawn } from 'node:child_process'
import { createReadStream } from 'node:fs'
import { Readable } from 'node:stream'
import { afterEach, expect, it } from 'vitest'
import { readLines, type SerialPortLike } from '../../src/board'
import { rowCount } from '../../src/shared/board/log/board-log'
import { previewLog } from '../../src/shared/board/log/read-log'
import { RowReader } from '../../src/shared/board/log/row-reader'
import { defaultTarget } from '../../src/shared/target/default-target'
import { describeWithTools } from '../support/tools'

/** A board that prints 200 samples with garbage in between, and is then unplugged. */
const BOARD = `
import os, pty, sys, tty, time
master, slave = pty.openpty()
tty.setraw(slave)
print(os.ttyname(slave), flush=True)
sys.stdin.readline()
os.write(master, b'cut,off\\r\\n')
for i in range(200):
    if i == 50:
        os.write(master, b'\\xff\\x00\\xfe#!\\r\\n')
    os.write(master, b'%d,%d,%d,4096,1,2,3\\r\\n' % (i * 9615, i, -i))
    time.sleep(0.001)
sys.stdin.readline()
`

let board: ChildProcess | null = null
afterEach(() => board?.kill())

describeWithTools('a pseudo-terminal in place of a serial port', ['python3'], () => {
  it('gives every sample, and garbage is counted', async () => {
    const running = spawn('python3', ['-c', BOARD], { stdio: ['pipe', 'pipe', 'inherit'] })
    board = running
    const path = String(await new Promise((resolve) => running.stdout.once('data', resolve))).trim()
    const abort = new AbortController()
    const stream = Readable.toWeb(createReadStream(path)) as ReadableStream<Uint8Array>
    const port: SerialPortLike = {
      open: async () => void running.stdin.write('go\n'),
      close: async () => {},
      readable: stream,
    }
    const first = '0,0,0,4096,1,2,3\n9615,1,-1,4096,1,2,3\n19230,2,-2,4096,1,2,3\n'
    const preview = previewLog(first, defaultTarget())
    if (!preview.ok) throw new Error(preview.message)
    const reader = new RowReader(preview.value.mapping)
    const ended = await readLines(port, {
      baudRate: 115_200,
      signal: abort.signal,
      onLine: (line) => {
        reader.line(line)
        if (reader.count === 200) abort.abort()
      },
    })
    expect(ended).toMatchObject({ ok: true, value: { ended: 'stopped' } })
    const log = reader.build()
    expect(rowCount(log)).toBe(200)
    expect(log.problemCount).toBe(1)
    expect(log.tMs?.[199]).toBeCloseTo(199 * 9.615, 6)
    expect([...log.values.slice(-6)]).toEqual([199, -199, 4096, 1, 2, 3])
  })
})
