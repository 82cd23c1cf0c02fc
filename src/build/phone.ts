import QRCode from 'qrcode'
import { certificateFor } from './certificate'
import { lanAddresses } from './lan-addresses'
import { DIST } from './paths'
import { movedNotice, prepareDist, readArguments, runCommand } from './serve'
import { serveFolder } from './static-server'

await runCommand(async () => {
  const options = readArguments(4343)
  const addresses = lanAddresses()
  const chosen = options.address ?? addresses[0]?.address
  if (chosen === undefined) {
    throw new Error('This computer is in no local network. Join the one the phone is in.')
  }
  await prepareDist(options)
  const certificate = await certificateFor([
    ...new Set([chosen, ...addresses.map(({ address }) => address)]),
  ])
  const { port } = await serveFolder({
    folder: DIST,
    host: '0.0.0.0',
    port: options.port,
    certificate,
  })
  const url = `https://${chosen}:${port}/`
  const others = addresses
    .filter(({ address }) => address !== chosen)
    .map(({ address, network }) => `  https://${address}:${port}/  (${network})`)
  console.log(`
${await qrCode(url)}
${movedNotice(options.port, port)}On the phone open  ${url}
${others.length > 0 ? `If the phone cannot reach it, try:\n${others.join('\n')}\n` : ''}
The phone will warn that the connection is not private: the certificate was made on this
computer and no authority knows it. Go on past the warning (often "Advanced", then "Proceed" or
"Visit"). If in doubt compare the certificate's SHA-256 fingerprint:
  ${certificate.fingerprint}
It is needed because browsers give motion readings to secure pages only.

Phone and computer must be in the same network, and it must let them talk: guest networks often
do not, and a firewall here must allow port ${port}.
Takes are stored on the phone under this very address: export the library before the address or
port changes. Behind such a warning most browsers do not keep the offline copy; for that put the
folder dist on any HTTPS host. Stop with Ctrl+C.`)
})

/** Dark on white whatever the terminal's colours are: not every camera reads it the other way. */
async function qrCode(text: string): Promise<string> {
  const lines = (await QRCode.toString(text, { type: 'utf8' })).split('\n')
  if (!process.stdout.isTTY) return lines.join('\n')
  return lines.map((line) => `\x1b[30;107m${line}\x1b[0m`).join('\n')
}
