import core from '../core/build/core.stamp?raw'
import { createRecogniserClient } from '../recogniser/create-client'
import { createPhoneSource } from '../sensors/phone-source'
import { createSimulatedSource } from '../sensors/simulated-source'
import { defaultTarget } from '../shared/target/default-target'
import { openStore } from '../storage/open-store'
import type { App } from './app'
import { type AppParts, assembleApp } from './assemble-app'
import { loadLight } from './load-light'
import { measuringDigest } from './source-version'
import { createStoreNews } from './store-news'
import { createUpdate } from './update'

/**
 * The app's state with the parts of this browser. Resolves when the stored libraries are read.
 * @param onBlocked an older version in another tab holds the start up; the message says what to do
 * @throws StorageError when the database cannot be opened.
 */
export async function createApp(onBlocked: (message: string) => void): Promise<App> {
  const storeNews = createStoreNews(onBlocked)
  const parts: AppParts = {
    store: await openStore('movewright', storeNews.options),
    storeNews,
    recogniser: createRecogniserClient(),
    core: `${core} ${measuringDigest()}`,
    phone: createPhoneSource(),
    simulated: createSimulatedSource(),
    defaultTarget,
    generateDemoLibrary: async (...args) =>
      (await import('../shared/demo/demo-library')).generateDemoLibrary(...args),
    createUpdate,
    loadLight,
    exportFirmware: async (...args) => (await import('./export-firmware')).exportFirmware(...args),
  }
  return assembleApp(parts)
}
