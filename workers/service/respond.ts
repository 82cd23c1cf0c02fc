import { fromCache } from './app-cache'

/** Answers from the installed files; what is not among them comes from the network. */
export async function respond(request: Request, version: string, scope: string): Promise<Response> {
  if (request.mode === 'navigate' && isPage(request.url, scope)) {
    const page = await fromCache(new URL('index.html', scope).href, version)
    if (page !== undefined) return page
  }
  return (await fromCache(request, version)) ?? fetch(request)
}

/** The app is one page: its folder, or index.html in it. */
function isPage(url: string, scope: string): boolean {
  const { origin, pathname } = new URL(url)
  return [scope, `${scope}index.html`].includes(origin + pathname)
}
