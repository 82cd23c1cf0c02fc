import { SOURCE_VERSION } from '../shared/words/en/source-version'

declare const __SOURCE_VERSION__: { app: string; commit: string | null }

declare const __MEASURING__: string

/** Digest of the sources that train and measure; the build puts it in, tests have none. */
export function measuringDigest(): string {
  return typeof __MEASURING__ === 'undefined' ? '' : __MEASURING__
}

/** Which sources this page was built from; the build puts it in, tests have none. */
export function sourceVersion(): { app: string; commit: string | null } {
  return typeof __SOURCE_VERSION__ === 'undefined'
    ? { app: SOURCE_VERSION.notBuilt, commit: null }
    : __SOURCE_VERSION__
}
