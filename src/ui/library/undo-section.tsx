import { LIBRARY } from '../../shared/words/en/library'
import { Button, Section, useApp } from '../common'

/** What was done in this visit and can still be undone. */
export function UndoSection() {
  const { undoable } = useApp()
  if (undoable.value.length === 0) return null
  return (
    <Section title={LIBRARY.undoTitle}>
      <ul class="undos">
        {undoable.value.map((notice) => (
          <li key={notice.id}>
            <span>{notice.text}</span>
            <Button onClick={() => void notice.undo?.()}>{LIBRARY.undo}</Button>
          </li>
        ))}
      </ul>
    </Section>
  )
}
