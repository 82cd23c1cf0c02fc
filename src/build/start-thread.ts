import { pathToFileURL } from 'node:url'
import { Worker } from 'node:worker_threads'

// Node 20 does not hand the loader for TypeScript on to threads, so each registers it for itself.
const START = `
import(process.env.TSX).then(({ register }) => {
  register()
  return import(process.env.SCRIPT)
})`

/** A thread of Node that runs a TypeScript file. */
export function startThread(script: URL): Worker {
  const tsx = pathToFileURL(new URL(import.meta.resolve('tsx/esm/api')).pathname).href
  return new Worker(START, {
    eval: true,
    env: { ...process.env, TSX: tsx, SCRIPT: script.href },
  })
}
