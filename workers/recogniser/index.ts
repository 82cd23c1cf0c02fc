import { expose } from 'comlink'
import { loadCore } from './load-core'
import { createService } from './service'
import { giveSignOfLife } from './sign-of-life'

expose(createService(loadCore))
giveSignOfLife()
