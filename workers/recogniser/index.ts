import { expose } from 'comlink'
import { loadCore } from './load-core'
import { createService } from './service'

expose(createService(loadCore))
