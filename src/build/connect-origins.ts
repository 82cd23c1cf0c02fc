/** A '*' would stand for any host in a policy. */
const HOST = /^[a-z0-9.-]+$/
const OWN_COMPUTER = /^(localhost|127\.\d+\.\d+\.\d+)$/

/**
 * Origins that MOVEWRIGHT_CONNECT allows the built page to talk to, besides its own: for a folder of
 * sessions on another host. Whole origins only, so that nothing wider slips in.
 * @param text origins parted by spaces, such as 'https://files.example.org'
 * @throws Error with one sentence when a part is none
 */
export function connectOrigins(text: string): string[] {
  return text
    .split(/\s+/)
    .filter((part) => part !== '')
    .map((part) => {
      const url = URL.canParse(part) ? new URL(part) : null
      const isHere = part.startsWith('http:') && OWN_COMPUTER.test(url?.hostname ?? '')
      const isSecure = part.startsWith('https:') && HOST.test(url?.hostname ?? '')
      if ((isSecure || isHere) && url?.origin === part) return part
      throw new Error(
        `MOVEWRIGHT_CONNECT holds "${part}": write origins such as https://files.example.org, https only, without a path.`,
      )
    })
}
