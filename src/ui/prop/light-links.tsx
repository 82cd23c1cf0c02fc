import { countLightMemory, LIGHT_CODE_BYTES } from '../../shared/firmware/memory'
import type { Library } from '../../shared/model/library'
import { PROP } from '../../shared/words/en/prop'
import { Button, Section } from '../common'

/** The ways to light, LED and cells, and what the light takes of the board. */
export function LightLinks({ library }: { library: Library }) {
  const { tableBytes, lightnessBytes, stateBytes } = countLightMemory(library)
  return (
    <Section title={PROP.lightAndCells}>
      <p>{PROP.lightLead}</p>
      <div class="buttons">
        <Button href="#/light">{PROP.light}</Button>
        <Button href="#/light/led">{PROP.led}</Button>
        <Button href="#/light/cells">{PROP.cells}</Button>
      </div>
      <p class="small quiet">
        {PROP.lightTakes(tableBytes + lightnessBytes, stateBytes, LIGHT_CODE_BYTES)}
      </p>
    </Section>
  )
}
