import type { PrecachedFile } from '../../src/shared/protocol/precached-file'

/** One host may serve several copies below different paths; each keeps to its own caches. */
function prefixOf(scope: string): string {
  return `movewright ${new URL(scope).pathname} `
}

/** Name of the cache for exactly these files: the same build gives the same name. */
export function versionName(scope: string, files: PrecachedFile[]): string {
  let hash = 0x811c9dc5
  for (const character of files.map((file) => `${file.path} ${file.integrity}\n`).join('')) {
    // FNV-1a, 32 bits.
    hash = Math.imul(hash ^ character.charCodeAt(0), 0x01000193)
  }
  return prefixOf(scope) + (hash >>> 0).toString(16).padStart(8, '0')
}

/**
 * Loads all files, or fails as a whole: a host in the middle of an upload, or one that changes
 * files on the way, does not get half a version installed.
 */
export async function installVersion(
  name: string,
  scope: string,
  files: PrecachedFile[],
): Promise<void> {
  const cache = await caches.open(name)
  const requests = files.map(({ path, integrity }) => {
    return new Request(new URL(path, scope), { cache: 'no-cache', integrity })
  })
  try {
    await cache.addAll(requests)
  } catch (error) {
    await caches.delete(name)
    throw error
  }
}

/**
 * Keeps this version and the one before it: another tab may still run the older one and ask for
 * a part it loads late.
 */
export async function removeOldVersions(scope: string, current: string): Promise<void> {
  const prefix = prefixOf(scope)
  const names = await caches.keys()
  const others = names.filter((name) => name.startsWith(prefix) && name !== current)
  // keys() gives caches in the order in which they were made.
  await Promise.all(others.slice(0, -1).map((name) => caches.delete(name)))
}

/** The file from this version, else from the one before it. */
export async function fromCache(request: Request | string, current: string) {
  const cache = await caches.open(current)
  const found = await cache.match(request, { ignoreSearch: true })
  return found ?? caches.match(request, { ignoreSearch: true })
}
