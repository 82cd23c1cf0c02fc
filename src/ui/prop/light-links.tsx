import { Button, Section } from '../common'

/** The ways to light, LED and cells. */
export function LightLinks() {
  return (
    <Section title="Light and cells">
      <p>How the prop answers, whether it is safe to look at, and how long its cells last.</p>
      <div class="buttons">
        <Button href="#/light">Light</Button>
        <Button href="#/light/led">LED</Button>
        <Button href="#/light/cells">Cells</Button>
      </div>
    </Section>
  )
}
