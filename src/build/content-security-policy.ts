import type { Plugin } from 'vite'
import { connectOrigins } from './connect-origins'

/**
 * The app talks to its own origin only, and to those that MOVEWRIGHT_CONNECT names for a folder of
 * sessions. 'wasm-unsafe-eval' allows compiling the core and nothing else; blob: and data: images are
 * pictures the app makes itself.
 */
function contentPolicy(connect: readonly string[]): string {
  return [
    "default-src 'none'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "style-src 'self'",
    "img-src 'self' data: blob:",
    "media-src 'self' blob:",
    ["connect-src 'self'", ...connect].join(' '),
    "worker-src 'self'",
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ')
}

/** Puts the policy first in the head of the built page; the dev server needs inline styles. */
export function contentSecurityPolicy(): Plugin {
  return {
    name: 'content-security-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: {
          'http-equiv': 'Content-Security-Policy',
          content: contentPolicy(connectOrigins(process.env.MOVEWRIGHT_CONNECT ?? '')),
        },
        injectTo: 'head-prepend',
      },
    ],
  }
}
