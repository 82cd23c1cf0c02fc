import { X509Certificate } from 'node:crypto'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { generate } from 'selfsigned'
import { repositoryPath } from './paths'

/** Kept, so that a phone that accepted it once need not do so at every start. */
const FILE = repositoryPath('node_modules/.cache/movewright/phone-certificate.json')
const VALID_DAYS = 365
const DAY_MS = 86_400_000

export interface Certificate {
  /** PEM. */
  key: string
  cert: string
  /** SHA-256, as browsers show it. */
  fingerprint: string
}

/** The certificate kept from an earlier start if it fits these IPv4 addresses, else a new one. */
export async function certificateFor(addresses: string[]): Promise<Certificate> {
  const kept = readKept()
  if (kept !== null && covers(kept.cert, addresses)) return withFingerprint(kept)
  const made = await makeCertificate(addresses)
  mkdirSync(dirname(FILE), { recursive: true })
  writeFileSync(FILE, JSON.stringify({ key: made.key, cert: made.cert }), { mode: 0o600 })
  return made
}

type Pair = Pick<Certificate, 'key' | 'cert'>

function readKept(): Pair | null {
  try {
    const { key, cert } = JSON.parse(readFileSync(FILE, 'utf8')) as Partial<Pair>
    return key !== undefined && cert !== undefined ? { key, cert } : null
  } catch {
    return null // none yet, or damaged: a new one is made
  }
}

function covers(cert: string, addresses: string[]): boolean {
  try {
    const parsed = new X509Certificate(cert)
    const lastsMs = Date.parse(parsed.validTo) - Date.now()
    return lastsMs > 7 * DAY_MS && addresses.every((address) => parsed.checkIP(address))
  } catch {
    return false
  }
}

/** Signed by itself, for these IPv4 addresses and localhost. */
export async function makeCertificate(addresses: string[]): Promise<Certificate> {
  const { private: key, cert } = await generate([{ name: 'commonName', value: 'Movewright' }], {
    keyType: 'ec',
    algorithm: 'sha256',
    // A day back, for a phone whose clock is behind.
    notBeforeDate: new Date(Date.now() - DAY_MS),
    notAfterDate: new Date(Date.now() + VALID_DAYS * DAY_MS),
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: [
          { type: 2, value: 'localhost' },
          ...addresses.map((ip) => ({ type: 7 as const, ip })),
        ],
      },
    ],
  })
  return withFingerprint({ key, cert })
}

function withFingerprint(pair: Pair): Certificate {
  return { ...pair, fingerprint: new X509Certificate(pair.cert).fingerprint256 }
}
