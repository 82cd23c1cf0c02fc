import { Button, HOME, Screen } from '../common'

/** For an address that leads to nothing, such as after a deletion. */
export function Missing({ what }: { what: string }) {
  return (
    <Screen title="Not here" back={HOME}>
      <p>This {what} is not in the open library. It was deleted, or belongs to another library.</p>
      <div class="buttons">
        <Button href={HOME}>Back to the gestures</Button>
        <Button href="#/library">Other libraries</Button>
      </div>
    </Screen>
  )
}
