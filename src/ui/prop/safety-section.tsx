import { Section } from '../common'

/** Short cautions; the rules of the place and people who know them decide. */
export function SafetySection() {
  return (
    <Section title="Before it leaves the bench">
      <ul class="notes">
        <li>
          Flashing light can bring on seizures. Keep flashes slow and few; follow the local rules of
          the event.
        </li>
        <li>
          Bright LEDs can hurt eyes at arm’s length. Use a diffuser, and have the brightness judged
          by someone qualified.
        </li>
        <li>
          Lithium cells need protection, the right charger and no crushing. Follow the maker’s sheet
          and local codes; ask a qualified person when unsure.
        </li>
        <li>
          The recogniser can miss or misread a movement: nothing that could harm may hang on it.
        </li>
      </ul>
    </Section>
  )
}
