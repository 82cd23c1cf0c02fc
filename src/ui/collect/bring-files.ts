import type { BroughtFile, CollectState } from '../../state/collect'
import { navigate } from '../common'

export const BRING = '#/collect/bring'

/** Shows what files would bring home. */
export function bringFiles(collect: CollectState, files: readonly File[]): void {
  const brought = files.map((file): BroughtFile => {
    return { name: file.name, bytes: async () => new Uint8Array(await file.arrayBuffer()) }
  })
  bringHome(collect, brought)
}

export function bringHome(collect: CollectState, files: readonly BroughtFile[]): void {
  if (files.length === 0) return
  void collect.bring(files)
  navigate(BRING)
}
