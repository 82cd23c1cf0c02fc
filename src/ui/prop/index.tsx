import { Screen } from '../common'

export function Prop(_props: { rest: string[] }) {
  return <Screen title="Prop">{null}</Screen>
}
