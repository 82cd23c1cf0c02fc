import type { RecogniserClient } from '../../../src/recogniser/client'
import { createRecogniserClient } from '../../../src/recogniser/create-client'
import { poolSize } from '../../../src/recogniser/worker-pool'
import { generateDemoLibrary } from '../../../src/shared/demo/demo-library'
import type { FullLibrary } from '../../../src/shared/model/library'

const SIZE = { testers: 4, takesPerGesture: 3, backgroundS: 20 }

/** Workers alive, as the page sees them. */
const alive = new Set<Worker>()
/** Those of them that have said something, and so are loaded. */
const spoken = new Set<Worker>()
let started = 0

function startWorker(): Worker {
  const worker = new Worker(new URL('../../../workers/recogniser/index.ts', import.meta.url), {
    type: 'module',
  })
  const end = worker.terminate.bind(worker)
  worker.terminate = () => {
    alive.delete(worker)
    spoken.delete(worker)
    end()
  }
  worker.addEventListener('message', () => spoken.add(worker))
  alive.add(worker)
  started++
  return worker
}

const library: Promise<FullLibrary> = generateDemoLibrary(1, undefined, undefined, SIZE).then(
  ({ library, recordings }) => {
    const gestures = library.gestures.slice(0, 3)
    const kept = recordings.filter(
      ({ recording }) =>
        recording.kind === 'background' || gestures.some(({ id }) => id === recording.gestureId),
    )
    return { library: { ...library, gestures }, recordings: kept }
  },
)

async function withClient<T>(size: number, work: (client: RecogniserClient) => Promise<T>) {
  const client = createRecogniserClient(startWorker, size)
  try {
    return await work(client)
  } finally {
    client.dispose()
  }
}

const trials: Record<string, () => Promise<unknown>> = {
  sizes: async () => [undefined, 0, 1, 2, 4, 64].map((cores) => poolSize(cores)),

  same: async () => {
    const full = await library
    const answers: string[] = []
    for (const size of [1, 2, 3]) {
      await withClient(size, async (client) => {
        const evaluation = await client.evaluate(full, 'tester')
        const grip = await client.grip(full)
        answers.push(JSON.stringify([evaluation, grip]))
      })
    }
    return { answers: new Set(answers).size, ok: answers[0]!.startsWith('[{"ok":true') }
  },

  progress: async () => {
    const told: number[] = []
    await withClient(2, async (client) =>
      client.evaluate(await library, 'tester', {
        onProgress: ({ done, total }) => told.push(done / total),
      }),
    )
    return { rises: told.every((share, i) => i === 0 || share >= told[i - 1]!), last: told.at(-1) }
  },

  killed: async () => {
    const full = await library
    const wanted = await withClient(2, (client) => client.evaluate(full, 'tester'))
    const before = started
    const answer = await withClient(2, (client) => {
      let killed = false
      return client.evaluate(full, 'tester', {
        onProgress: ({ done, what }) => {
          // In the middle of a round, as when the system takes the memory of one worker.
          if (killed || done === 0 || spoken.size < 2 || !what.startsWith('holding out')) return
          killed = true
          Worker.prototype.terminate.call([...spoken].at(-1)!)
        },
      })
    })
    return { same: JSON.stringify(answer) === JSON.stringify(wanted), fresh: started - before - 2 }
  },

  cancelled: async () => {
    const full = await library
    return withClient(3, async (client) => {
      const stop = new AbortController()
      const code = await client
        .evaluate(full, 'tester', {
          signal: stop.signal,
          onProgress: ({ done, what }) => {
            if (done > 0 && what.startsWith('holding out')) stop.abort()
          },
        })
        .then((answer) => (answer.ok ? 'ok' : answer.code))
      const left = alive.size
      const again = await client.evaluate(full, 'tester')
      return { code, busyEnded: left < 3, again: again.ok }
    })
  },

  released: async () => {
    const full = await library
    return withClient(3, async (client) => {
      await client.evaluate(full, 'tester')
      const during = alive.size
      await new Promise((resolve) => setTimeout(resolve, 7_000))
      return { during, after: alive.size }
    })
  },
}

declare global {
  interface Window {
    poolTrial?: (name: string) => Promise<unknown>
  }
}

window.poolTrial = (name) => trials[name]!()
