import { MOVES } from '../../shared/words/en/moves'
import { Button, HOME, Screen } from '../common'

/** For an address that leads to nothing, such as after a deletion. */
export function Missing({ what }: { what: keyof typeof MOVES.missing }) {
  return (
    <Screen title={MOVES.notHere} back={HOME}>
      <p>{MOVES.missing[what]}</p>
      <div class="buttons">
        <Button href={HOME}>{MOVES.backToGestures}</Button>
        <Button href="#/library">{MOVES.otherLibraries}</Button>
      </div>
    </Screen>
  )
}
