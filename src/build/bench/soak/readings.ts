import type { CDPSession } from 'playwright-core'

/** What must level off, read after the page's garbage was collected. */
export interface Reading {
  heapBytes: number
  /** Nodes and listeners, those of thrown-away documents and screens included. */
  nodes: number
  listeners: number
  workers: number
  /** Rows of the database by object store. */
  rows: Record<string, number>
  /** What the browser says the database takes on the disk. */
  databaseBytes: number
}

const ROWS = `new Promise((resolve, reject) => {
  const opening = indexedDB.open('movewright')
  opening.onerror = () => reject(opening.error)
  opening.onsuccess = () => {
    const db = opening.result
    const names = [...db.objectStoreNames]
    const reading = db.transaction(names)
    const counts = names.map((name) => reading.objectStore(name).count())
    reading.oncomplete = () => {
      db.close()
      resolve(Object.fromEntries(names.map((name, i) => [name, counts[i].result])))
    }
  }
})`

export async function read(session: CDPSession): Promise<Reading> {
  const rows = await valueIn<Record<string, number>>(session, ROWS)
  const databaseBytes = await valueIn<number>(
    session,
    'navigator.storage.estimate().then((all) => all.usageDetails?.indexedDB ?? all.usage)',
  )
  const workers = await valueIn<number>(session, 'soak.workers()')
  // Twice: what the first run finalises the second one frees.
  await session.send('HeapProfiler.collectGarbage')
  await session.send('HeapProfiler.collectGarbage')
  const { usedSize } = await session.send('Runtime.getHeapUsage')
  const { metrics } = await session.send('Performance.getMetrics')
  const metric = (name: string) => metrics.find((one) => one.name === name)?.value ?? 0
  return {
    heapBytes: usedSize,
    nodes: metric('Nodes'),
    listeners: metric('JSEventListeners'),
    workers,
    rows,
    databaseBytes,
  }
}

/** Value of an expression in the page; promises are waited for. */
export async function valueIn<T>(session: CDPSession, expression: string): Promise<T> {
  const { result, exceptionDetails } = await session.send('Runtime.evaluate', {
    expression,
    awaitPromise: true,
    returnByValue: true,
  })
  if (exceptionDetails !== undefined) {
    throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text)
  }
  return result.value as T
}
