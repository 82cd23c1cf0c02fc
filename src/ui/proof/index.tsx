import { Screen } from '../common'

export function Proof(_props: { rest: string[] }) {
  return <Screen title="Proof">{null}</Screen>
}
