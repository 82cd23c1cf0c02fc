import { DIST } from './paths'
import { movedNotice, prepareDist, readArguments, runCommand } from './serve'
import { serveFolder } from './static-server'

await runCommand(async () => {
  const options = readArguments(4300)
  await prepareDist(options)
  const { port } = await serveFolder({ folder: DIST, host: '127.0.0.1', port: options.port })
  console.log(`
${movedNotice(options.port, port)}Movewright is at  http://localhost:${port}/

Without a phone, choose the simulated phone and the demo library on the first screen.
With a phone, use "npm run phone". Stop with Ctrl+C.`)
})
