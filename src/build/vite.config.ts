import preact from '@preact/preset-vite'
import { defineConfig } from 'vite'
import { contentSecurityPolicy } from './content-security-policy'
import { pageWords } from './language/page-words'
import { chosenLanguage, words } from './language/words'
import { measuringDigest } from './measuring'
import { DIST, repositoryPath } from './paths'
import { sourceVersion } from './source-version'

/**
 * How the app is built in a language; see `chosenLanguage`. Addresses are relative, so that the
 * built folder runs under any path of any static host.
 */
export const configOf = (language: string) =>
  defineConfig({
    root: repositoryPath('src'),
    publicDir: repositoryPath('public'),
    base: './',
    cacheDir: repositoryPath('node_modules/.cache/vite'),
    define: {
      __SOURCE_VERSION__: JSON.stringify(sourceVersion()),
      __MEASURING__: JSON.stringify(measuringDigest()),
    },
    plugins: [words(language), preact(), pageWords(language), contentSecurityPolicy()],
    worker: { format: 'es', plugins: () => [words(language)] },
    server: { fs: { allow: [repositoryPath('.')] } },
    build: {
      outDir: DIST,
      emptyOutDir: true,
      target: 'es2022',
      // A wasm or image put inline as a data: address would be refused by the policy.
      assetsInlineLimit: 0,
      // Every browser that gives motion readings to a module worker preloads modules by itself.
      modulePreload: { polyfill: false },
      reportCompressedSize: false,
      license: { fileName: 'third-party-licences.md' },
    },
  })

export default configOf(chosenLanguage(process.env.MOVEWRIGHT_LANGUAGE ?? ''))
