import { afterAll, beforeAll, expect, it } from 'vitest'
import type { RunningServer } from '../../src/build/static-server'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { openRig, type Rig } from './rig'

/**
 * A port in the page in place of a device, as no board is plugged into the machine of the tests. It prints
 * a board at rest at the 52 Hz of the default target until `unplug` is set.
 */
const FAKE_PORT = `(() => {
  const encoder = new TextEncoder()
  let seed = 7
  // A few counts that do not repeat: a pattern would be found as a tone.
  const noise = () => { seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0; return (seed >>> 29) - 3 }
  let timer
  let stream = null
  const port = {
    get readable() { return stream },
    async open({ baudRate }) {
      window.openedAt = baudRate
      let i = 0
      stream = new ReadableStream({
        start(controller) {
          timer = setInterval(() => {
            if (window.unplug) {
              clearInterval(timer)
              stream = null
              controller.error(new DOMException('The device has been lost.', 'NetworkError'))
              return
            }
            // Pieces end anywhere, as a driver hands them over.
            const line = [i * 19231, noise(), noise(), 4098 + noise(), 12 + noise(), noise() - 7, noise()].join(',') + '\\r\\n'
            const cut = i % line.length
            controller.enqueue(encoder.encode(line.slice(0, cut)))
            controller.enqueue(encoder.encode(line.slice(cut)))
            i++
          }, 19)
        },
        cancel() { clearInterval(timer) },
      })
    },
    async close() {},
  }
  Object.defineProperty(navigator, 'serial', { value: { requestPort: async () => port } })
})()`

describeWithTools('a board over a serial port', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig

  beforeAll(async () => {
    server = await serveBuiltApp()
    rig = await openRig()
    await rig.page.addInitScript(FAKE_PORT)
    await rig.open(server.url)
  })
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
  })

  const tap = (name: string | RegExp) => rig.page.getByRole('button', { name }).first().tap()
  const see = (text: string | RegExp) =>
    rig.page.getByText(text).first().waitFor({ timeout: 30_000 })

  it('is connected at the chosen rate, and its columns are guessed', async () => {
    await tap('Start an own library')
    await rig.page.getByLabel('Name of the library').fill('Bench')
    await tap('Create')
    await rig.page.getByRole('link', { name: 'Prop', exact: true }).tap()
    await rig.page.getByRole('link', { name: /Check a board/ }).tap()
    await rig.page.getByLabel(/Baud rate/).selectOption('230400')
    await tap('Connect the board')
    await see(/time in us, accelerometer in count, gyroscope in count/)
    expect(await rig.look('window.openedAt')).toBe(230_400)
  })

  it('logs the first step, and what it says is checked at once', async () => {
    await tap(/^Log 10 s$/)
    await see(/Nothing speaks against this board/)
    const step = rig.page.getByRole('listitem').filter({ hasText: 'Lie still' }).first()
    const samples = Number(/(\d+) samples/.exec((await step.textContent()) ?? '')?.[1])
    expect(samples).toBeGreaterThan(200)
  })

  it('keeps what was read when the board is unplugged on the way', async () => {
    await tap(/^Log 2 s$/)
    await see(/x up: [1-9]\d* samples?/)
    await rig.look('window.unplug = true')
    await see(/unplugged/)
    await rig.page
      .getByRole('listitem')
      .filter({ hasText: 'x up' })
      .getByText(/\d+ samples?/)
      .waitFor({ timeout: 30_000 })
  })

  it('reads a pasted log, names the lines it left out, and says what is frozen', async () => {
    await rig.page.getByText('as a file or text').tap()
    const rows = Array.from(
      { length: 300 },
      (_, i) => `${i % 7} ${-(i % 5)} 4098 ${i % 3} 2 ${i % 4}`,
    )
    rows[10] = '1 2 oops 4 5 6'
    await rig.page
      .getByLabel('This log is of')
      .selectOption({ label: 'something else, moved freely' })
    await rig.page.getByLabel('or paste lines').fill(rows.join('\n'))
    await tap('Read the log')
    await see(/299 samples read\. 1 line was left out: line 11, column 3 holds "oops"/)
  })
})
