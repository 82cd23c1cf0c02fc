import { Screen } from '../common'

export function Moves() {
  return <Screen title="Moves">{null}</Screen>
}
