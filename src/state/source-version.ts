declare const __SOURCE_VERSION__: { app: string; commit: string | null }

/** Which sources this page was built from; the build puts it in, tests have none. */
export function sourceVersion(): { app: string; commit: string | null } {
  return typeof __SOURCE_VERSION__ === 'undefined'
    ? { app: 'not built', commit: null }
    : __SOURCE_VERSION__
}
