import { SHELL } from '../../shared/words/en/shell'
import { Button, useApp } from '../common'

/** Says that another tab stores, and takes it over. */
export function PenLine() {
  const app = useApp()
  if (app.writesHere.value) return null
  return (
    <div class="shell-notice">
      <p>{SHELL.otherTabStores}</p>
      <Button onClick={() => void app.writeHere()}>{SHELL.storeHere}</Button>
    </div>
  )
}
