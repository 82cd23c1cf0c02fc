import { PROP } from '../../shared/words/en/prop'
import { Section } from '../common'

/** Short cautions; the rules of the place and people who know them decide. */
export function SafetySection() {
  return (
    <Section title={PROP.safetyTitle}>
      <ul class="notes">
        <li>{PROP.flashingLight}</li>
        <li>{PROP.brightLeds}</li>
        <li>{PROP.lithiumCells}</li>
        <li>{PROP.canMiss}</li>
      </ul>
    </Section>
  )
}
