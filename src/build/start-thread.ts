import { createRequire } from 'node:module'
import { pathToFileURL } from 'node:url'
import { Worker } from 'node:worker_threads'

// Node 20 does not hand the loader for TypeScript on to threads, so each registers it for itself.
const START = `
import(process.env.LOADER).then(({ register }) => {
  register()
  return import(process.env.SCRIPT)
})`

/** A thread of Node that runs a TypeScript file. */
export function startThread(script: URL): Worker {
  // The loader's CommonJS build looks for its own parts in the wrong place; the other is beside it.
  const loader = createRequire(import.meta.url)
    .resolve('tsx/esm/api')
    .replace(/\.cjs$/, '.mjs')
  const env = { ...process.env, LOADER: pathToFileURL(loader).href, SCRIPT: script.href }
  return new Worker(START, { eval: true, env })
}
