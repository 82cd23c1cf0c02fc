import { type ChildProcess, spawn } from 'node:child_process'
import type { Readable, Writable } from 'node:stream'
import type { CDPSession } from 'playwright-core'
import { CHROMIUM_ARGUMENTS } from './chromium'

/** Sends DevTools commands to one page. */
export type PageSession = Pick<CDPSession, 'send'>

interface Message {
  id?: number
  method?: string
  params?: unknown
  result?: unknown
  error?: { message: string }
}

/**
 * A browser spoken to by DevTools messages alone. Playwright keeps its pages visible whatever
 * happens; here a page behind another one is hidden, as on a phone, and the browser's own process
 * is known, so that it can be killed as a power cut would.
 */
export class BareChromium {
  readonly #process: ChildProcess
  readonly #ended: Promise<void>
  readonly #open = new Map<number, (message: Message) => void>()
  #lastId = 0
  #received = ''
  /** Events of the browser and its pages, by DevTools name. */
  onEvent: (method: string, params: unknown) => void = () => undefined

  constructor(path: string, profileFolder: string, extraArguments: readonly string[] = []) {
    this.#process = spawn(
      path,
      [
        '--headless=new',
        '--remote-debugging-pipe',
        `--user-data-dir=${profileFolder}`,
        ...CHROMIUM_ARGUMENTS,
        ...extraArguments,
        'about:blank',
      ],
      // A group of its own, by which the end of all its children is seen.
      { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'], detached: true },
    )
    this.#ended = new Promise((resolve) => this.#process.once('exit', () => resolve()))
    const output = this.#process.stdio[4] as Readable
    output.setEncoding('utf8')
    output.on('data', (text: string) => this.#receive(text))
    // A killed browser breaks its pipes; whoever waits for an answer learns it from `kill`.
    output.on('error', () => undefined)
    ;(this.#process.stdio[3] as Writable).on('error', () => undefined)
  }

  /** The tab that the browser opened by itself. */
  async firstTab(): Promise<PageSession> {
    for (;;) {
      const { targetInfos } = await this.#send<{
        targetInfos: { targetId: string; type: string }[]
      }>('Target.getTargets', {})
      const page = targetInfos.find(({ type }) => type === 'page')
      if (page !== undefined) return this.#attach(page.targetId)
      await new Promise((resolve) => setTimeout(resolve, 20))
    }
  }

  /** Opens a tab in front of all others. */
  async openTab(): Promise<{ targetId: string; session: PageSession }> {
    const { targetId } = await this.#send<{ targetId: string }>('Target.createTarget', {
      url: 'about:blank',
    })
    return { targetId, session: await this.#attach(targetId) }
  }

  async #attach(targetId: string): Promise<PageSession> {
    const { sessionId } = await this.#send<{ sessionId: string }>('Target.attachToTarget', {
      targetId,
      flatten: true,
    })
    const send = (method: string, params: object = {}) => this.#send(method, params, sessionId)
    return { send } as PageSession
  }

  async activate(targetId: string): Promise<void> {
    await this.#send('Target.activateTarget', { targetId })
  }

  async closeTab(targetId: string): Promise<void> {
    await this.#send('Target.closeTarget', { targetId })
  }

  async close(): Promise<void> {
    await this.#send('Browser.close', {})
    await this.#ended
  }

  /**
   * Kills the browser's own process and then its children, which would take two seconds to notice.
   * Resolves when the last one has ended, as one of them may still hold the profile's files.
   */
  async kill(): Promise<void> {
    this.#process.kill('SIGKILL')
    await this.#ended
    this.#signalGroup('SIGKILL')
    while (this.#signalGroup(0)) await new Promise((resolve) => setTimeout(resolve, 5))
    for (const answer of this.#open.values()) answer({ error: { message: 'killed' } })
    this.#open.clear()
  }

  /** To whatever is left of this browser's own group; false when nothing is. 0 only asks. */
  #signalGroup(signal: 'SIGKILL' | 0): boolean {
    const { pid } = this.#process
    if (pid === undefined) return false
    try {
      return process.kill(-pid, signal)
    } catch {
      return false
    }
  }

  #send<T>(method: string, params: object, sessionId?: string): Promise<T> {
    const id = ++this.#lastId
    const input = this.#process.stdio[3] as Writable
    input.write(`${JSON.stringify({ id, method, params, sessionId })}\0`)
    return new Promise((resolve, reject) => {
      this.#open.set(id, ({ result, error }) => {
        if (error === undefined) resolve(result as T)
        else reject(new Error(`${method}: ${error.message}`))
      })
    })
  }

  /** Messages end with a zero character, wherever the pipe cuts them. */
  #receive(text: string): void {
    const parts = (this.#received + text).split('\0')
    this.#received = parts.pop() ?? ''
    for (const part of parts) {
      const message = JSON.parse(part) as Message
      if (message.id === undefined) {
        if (message.method !== undefined) this.onEvent(message.method, message.params)
        continue
      }
      this.#open.get(message.id)?.(message)
      this.#open.delete(message.id)
    }
  }
}
