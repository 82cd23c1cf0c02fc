import { parentPort } from 'node:worker_threads'
import { loadCoreForNode } from '../../load-core'

/** Series to compare all with all, and how long at least to do so over and over, ms. */
export interface MatchOrder {
  rows: Int8Array[]
  columns: Int8Array[]
  channels: number
  band: number
  leastMs: number
}

/** A thread that compares; says how many milliseconds a pair took. */
const core = await loadCoreForNode()
parentPort?.on('message', ({ rows, columns, channels, band, leastMs }: MatchOrder) => {
  const began = performance.now()
  let rounds = 0
  while (performance.now() - began < leastMs) {
    core.dtwMatrix(rows, columns, { channels, band, cost: 0 })
    rounds++
  }
  const pairs = rounds * rows.length * columns.length
  parentPort?.postMessage((performance.now() - began) / pairs)
})
parentPort?.postMessage('ready')
