/** Last parts of the paths that a PROPFIND answered (RFC 4918, 9.1), decoded; folders left out. */
export function namesIn(multistatus: Document): string[] {
  const hrefs = [...multistatus.querySelectorAll('*')].filter(
    ({ localName, namespaceURI }) => localName === 'href' && namespaceURI === 'DAV:',
  )
  return hrefs.flatMap((href) => {
    const path = (href.textContent ?? '').trim()
    const name = path.split('/').at(-1) ?? ''
    return name === '' ? [] : [decoded(name)]
  })
}

function decoded(name: string): string {
  try {
    return decodeURIComponent(name)
  } catch {
    return name
  }
}
