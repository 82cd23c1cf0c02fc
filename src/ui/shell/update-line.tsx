import { Button, Icon, useApp } from '../common'

/** Offers a newer version that is kept already; never while something is recorded or live. */
export function UpdateLine() {
  const { update } = useApp()
  if (!update.offered.value) return null
  return (
    <div class="shell-notice">
      <p>A newer version is ready. This page reloads; your takes stay.</p>
      <Button onClick={update.apply}>Update</Button>
      <Button tone="quiet" label="Not now" onClick={update.putOff}>
        <Icon name="cross" />
      </Button>
    </div>
  )
}
