export const WITHDRAWAL_KINDS = ['tester', 'session', 'content'] as const

/**
 * Says that recordings are gone on purpose, so that no other copy brings them back. It names them
 * and holds nothing of them.
 */
export interface Withdrawal {
  /** All of a tester by `testerKey`, a session by its id, or one recording by its content id. */
  kind: (typeof WITHDRAWAL_KINDS)[number]
  key: string
  /** 'withdrawn': the tester no longer agrees; 'dropped': the take was not good enough. */
  why: 'withdrawn' | 'dropped'
  /** For people. */
  testerCode: string
  /** RFC 3339 in UTC. */
  at: string
}
