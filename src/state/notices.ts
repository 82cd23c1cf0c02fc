import { type ReadonlySignal, signal } from '@preact/signals'
import type { Notice } from './app'

/** How long a line without a way back stays; one with it stays twice as long. */
const SHOWN_MS = 6000

export interface Notices {
  shown: ReadonlySignal<Notice[]>
  /** Every act of this visit that can still be undone, newest first. */
  undoable: ReadonlySignal<Notice[]>
  /** @param undo resolves with whether it was done; if not, it can still be undone */
  say(text: string, undo?: () => Promise<boolean>): void
  trouble(text: string): void
  /** Takes the line off the screen; what it offers to undo stays in `undoable`. */
  dismiss(id: number): void
}

/** Lines at the bottom of the screen. Trouble stays until it is closed. */
export function createNotices(): Notices {
  const shown = signal<Notice[]>([])
  const undoable = signal<Notice[]>([])
  let lastId = 0

  const dismiss = (id: number) => {
    shown.value = shown.value.filter((notice) => notice.id !== id)
  }
  const show = (notice: Notice) => {
    // One at a time: a stack of lines would cover what the thumb needs.
    shown.value = [notice]
    if (notice.tone === 'plain') {
      setTimeout(dismiss, notice.undo === undefined ? SHOWN_MS : 2 * SHOWN_MS, notice.id)
    }
  }
  const say = (text: string, undo?: () => Promise<boolean>) => {
    lastId += 1
    const id = lastId
    if (undo === undefined) {
      show({ id, text, tone: 'plain' })
      return
    }
    const notice: Notice = { id, text, tone: 'plain', undo: onlyOnce(undo, setUndoable) }
    setUndoable(true)
    show(notice)

    function setUndoable(isUndoable: boolean): void {
      if (!isUndoable) dismiss(id)
      const others = undoable.value.filter((one) => one.id !== id)
      undoable.value = [...others, ...(isUndoable ? [notice] : [])].sort((a, b) => b.id - a.id)
    }
  }
  const trouble = (text: string) => {
    lastId += 1
    show({ id: lastId, text, tone: 'trouble' })
  }
  return { shown, undoable, say, trouble, dismiss }
}

/** An act that is done once, however often it is asked for; what could not be done may be again. */
function onlyOnce(
  act: () => Promise<boolean>,
  setPossible: (isPossible: boolean) => void,
): () => Promise<void> {
  let isSpent = false
  return async () => {
    if (isSpent) return
    isSpent = true
    setPossible(false)
    try {
      isSpent = await act()
    } catch (error) {
      isSpent = false
      throw error
    } finally {
      if (!isSpent) setPossible(true)
    }
  }
}
