import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { get } from 'node:https'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { checkServerIdentity as checkIdentityOf, type PeerCertificate } from 'node:tls'
import { describe, expect, it } from 'vitest'
import { makeCertificate } from '../../src/build/certificate'
import { lanAddresses } from '../../src/build/lan-addresses'
import { serveFolder } from '../../src/build/static-server'

describe('npm run phone', () => {
  it('serves over TLS that a client with this certificate verifies, for the address in it', async () => {
    const certificate = await makeCertificate(['127.0.0.1'])
    const folder = mkdtempSync(join(tmpdir(), 'movewright-phone-'))
    writeFileSync(join(folder, 'index.html'), 'page')
    const server = await serveFolder({ folder, host: '127.0.0.1', port: 0, certificate })
    try {
      expect(await fetchTrusting(certificate.cert, '127.0.0.1', server.port)).toBe('page')
      await expect(fetchTrusting(certificate.cert, '127.0.0.2', server.port)).rejects.toThrow()
    } finally {
      await server.close()
      rmSync(folder, { recursive: true })
    }
  })

  it('names the likeliest network first and those of containers last', () => {
    const info = (address: string, internal = false) => ({
      address,
      internal,
      family: 'IPv4' as const,
      netmask: '255.255.255.0',
      mac: '00:00:00:00:00:00',
      cidr: null,
    })
    const found = lanAddresses({
      lo: [info('127.0.0.1', true)],
      docker0: [info('172.17.0.1')],
      eth0: [info('203.0.113.7')],
      wlan0: [info('192.168.1.20')],
      wlan1: [info('10.0.0.5')],
    })
    expect(found.map(({ address }) => address)).toEqual([
      '192.168.1.20',
      '10.0.0.5',
      '203.0.113.7',
      '172.17.0.1',
    ])
  })
})

/** Verifies chain, dates, and that the certificate is for `host`. */
function fetchTrusting(cert: string, host: string, port: number): Promise<string> {
  return new Promise((resolve, reject) => {
    const checkServerIdentity = (_: string, peer: PeerCertificate) => checkIdentityOf(host, peer)
    get({ host: '127.0.0.1', port, ca: cert, checkServerIdentity, agent: false }, (response) => {
      let text = ''
      response.on('data', (chunk) => {
        text += chunk
      })
      response.on('end', () => resolve(text))
    }).on('error', reject)
  })
}
