import { SHELL } from '../../shared/words/en/shell'
import { Button, Icon, useApp } from '../common'

/** Offers a newer version that is kept already; never while something is recorded or live. */
export function UpdateLine() {
  const { update } = useApp()
  if (!update.offered.value) return null
  return (
    <div class="shell-notice">
      <p>{SHELL.newerVersion}</p>
      <Button onClick={update.apply}>{SHELL.update}</Button>
      <Button tone="quiet" label={SHELL.notNow} onClick={update.putOff}>
        <Icon name="cross" />
      </Button>
    </div>
  )
}
