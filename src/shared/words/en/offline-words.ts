/** States of the offline copy, as `src/offline` reports them. */
export type OfflineWord = 'unsupported' | 'installing' | 'ready' | 'update-waiting' | 'failed'

/** One sentence for people on whether the app starts without a network. */
export function offlineSentence(state: OfflineWord): string {
  return SENTENCES[state]
}

const SENTENCES: Record<OfflineWord, string> = {
  unsupported:
    'This browser does not keep the app here: without a network it will not start. Use HTTPS and no private window.',
  installing: 'The app is being kept on this device for use without a network.',
  ready: 'The app is kept on this device and starts without any network.',
  'update-waiting':
    'The app starts without any network. A newer version is kept and waits for your word.',
  failed:
    'The app could not be kept for use without a network: reload while online. If that does not help, the host alters files or its certificate is not trusted.',
}
