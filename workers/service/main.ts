import type { PrecachedFile } from '../../src/shared/protocol/precached-file'
import { installVersion, removeOldVersions, versionName } from './app-cache'
import { respond } from './respond'
import { SHARE_PATH, takeShare } from './take-share'

/** Put in by the build. */
declare const PRECACHED_FILES: PrecachedFile[]
declare const self: ServiceWorkerGlobalScope

const files = PRECACHED_FILES
const scope = self.registration.scope
const version = versionName(scope, files)

self.addEventListener('install', (event) => {
  event.waitUntil(installVersion(version, scope, files))
})

self.addEventListener('activate', (event) => {
  event.waitUntil(removeOldVersions(scope, version).then(() => self.clients.claim()))
})

// A new version waits until the person asks for it, or until no tab uses the old one.
self.addEventListener('message', (event) => {
  if (event.data?.type === 'SKIP_WAITING') void self.skipWaiting()
})

self.addEventListener('fetch', (event) => {
  const { request } = event
  if (request.method === 'POST' && request.url === new URL(SHARE_PATH, scope).href) {
    event.respondWith(takeShare(request, scope))
    return
  }
  if (request.method !== 'GET' || !request.url.startsWith(scope)) return
  event.respondWith(respond(request, version, scope))
})
