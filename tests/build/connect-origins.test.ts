import { expect, test } from 'vitest'
import { connectOrigins } from '../../src/build/connect-origins'

test('whole https origins are taken, several parted by spaces, and this computer for tries', () => {
  expect(connectOrigins('')).toEqual([])
  expect(connectOrigins(' https://files.example.org  http://localhost:8080 ')).toEqual([
    'https://files.example.org',
    'http://localhost:8080',
  ])
})

test.each([
  '*',
  'https:',
  'https://*',
  'https://*.example.org',
  'http://files.example.org',
  'https://files.example.org/',
  'https://files.example.org/team',
  "https://files.example.org;script-src 'unsafe-inline'",
  'files.example.org',
  'http://localhost.example.org',
  'data:',
])('%s opens the policy wider than one host and is refused', (text) => {
  expect(() => connectOrigins(text)).toThrow(
    /^MOVEWRIGHT_CONNECT holds ".+": write origins such as/,
  )
})
