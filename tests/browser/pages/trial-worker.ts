import { expose } from 'comlink'
import { giveSignOfLife } from '../../../workers/recogniser/sign-of-life'

/** A worker that can be told to behave badly. Its calls stand in for those of the service. */
const calls: string[] = []

const service = {
  async echo(text: string) {
    calls.push(text)
    return { ok: true, value: `${text} after ${calls.length}` }
  },
  async slow(ms: number) {
    await new Promise((resolve) => setTimeout(resolve, ms))
    return { ok: true, value: 'slow' }
  },
  /** Reports once before its answer and once behind it. */
  async reportLate(report: (word: string) => void) {
    await report('in time')
    setTimeout(() => report('late'), 50)
    return { ok: true, value: 'answer' }
  },
  async block() {
    for (;;);
  },
  async crash() {
    setTimeout(() => {
      throw new Error('on purpose')
    })
    return new Promise(() => {})
  },
  /** Ends without a word, as when the browser takes its memory away. */
  async vanish() {
    self.close()
    return new Promise(() => {})
  },
  async bug() {
    throw new Error('a bug')
  },
}

export type TrialService = typeof service

expose(service)
// A worker of this name keeps silent, to show what the sign of life is for.
if (self.name !== 'silent') giveSignOfLife()
