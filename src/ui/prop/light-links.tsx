import { countLightMemory, LIGHT_CODE_BYTES } from '../../shared/firmware/memory'
import type { Library } from '../../shared/model/library'
import { byteText } from '../../shared/words/en/numbers'
import { Button, Section } from '../common'

/** The ways to light, LED and cells, and what the light takes of the board. */
export function LightLinks({ library }: { library: Library }) {
  const { tableBytes, lightnessBytes, stateBytes } = countLightMemory(library)
  return (
    <Section title="Light and cells">
      <p>How the prop answers, whether it is safe to look at, and how long its cells last.</p>
      <div class="buttons">
        <Button href="#/light">Light</Button>
        <Button href="#/light/led">LED</Button>
        <Button href="#/light/cells">Cells</Button>
      </div>
      <p class="small quiet">
        It takes {byteText(tableBytes + lightnessBytes)} of flash for tables and{' '}
        {byteText(stateBytes)} of RAM, counted, and about {byteText(LIGHT_CODE_BYTES)} for its code,
        measured for a Cortex-M0.
      </p>
    </Section>
  )
}
