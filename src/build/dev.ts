import { createServer } from 'vite'
import { compileCore } from './build'
import config from './vite.config'

// For work on the screens: reloads on every change. No service worker and no content policy here.
compileCore()
const server = await createServer({ ...config, configFile: false })
await server.listen()
server.printUrls()
