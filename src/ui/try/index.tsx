import { Screen } from '../common'

export function Try(_props: { rest: string[] }) {
  return <Screen title="Try">{null}</Screen>
}
