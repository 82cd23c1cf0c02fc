/** A file of the app that is kept for offline use. */
export interface PrecachedFile {
  /** Relative to the service worker's own address, such as 'assets/main-1a2b3c.js'. */
  path: string
  /** Subresource Integrity value: a download that differs fails. */
  integrity: string
}
