/** Cache in which shared files wait for the page; the page's side is `src/offline/shared-files.ts`. */
const CACHE = 'movewright shared files'

/** Address below the scope that the manifest's share target posts to. */
export const SHARE_PATH = 'share'

/** Lays the files down for the page and leads to the screen that reads them. */
export async function takeShare(request: Request, scope: string): Promise<Response> {
  const form = await request.formData()
  const cache = await caches.open(CACHE)
  for (const [index, file] of form.getAll('files').entries()) {
    if (typeof file === 'string') continue
    const address = new URL(`shared/${index}/${encodeURIComponent(file.name)}`, scope)
    await cache.put(address, new Response(file))
  }
  return Response.redirect(new URL('./#/collect/shared', scope), 303)
}
