/** Cache in which the service worker lays files that another app shared; one name for both. */
const CACHE = 'movewright shared files'

/** Files that were shared to this app since they were last asked for. */
export async function takeSharedFiles(): Promise<{ name: string; bytes(): Promise<Uint8Array> }[]> {
  if (globalThis.caches === undefined) return []
  const cache = await caches.open(CACHE)
  const files = []
  for (const request of await cache.keys()) {
    const response = await cache.match(request)
    if (response === undefined) continue
    const name = decodeURIComponent(new URL(request.url).pathname.split('/').at(-1) ?? 'file')
    const content = new Uint8Array(await response.arrayBuffer())
    files.push({ name, bytes: async () => content })
    await cache.delete(request)
  }
  return files
}
