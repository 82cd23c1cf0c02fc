import { createServer } from 'vite'
import { compileCoreApart } from './build'
import config from './vite.config'

// For work on the screens: reloads on every change. No service worker and no content policy here.
compileCoreApart()
const server = await createServer({ ...config, configFile: false })
await server.listen()
server.printUrls()
