import './gallery.css'
import { Icon, Notice, Screen, Section } from '../common'
import { ICON_NAMES } from '../common/icon'
import { Actions } from './actions'
import { Charts, Ribbons } from './drawings'
import { Forms } from './forms'
import { Part } from './part'
import { Told } from './told'

const TOKENS = [
  'ground',
  'raised',
  'sunk',
  'line',
  'line-strong',
  'text',
  'text-quiet',
  'text-faint',
]

/** Every part that the app is drawn with, in its states. */
export function Gallery() {
  return (
    <Screen title="Gallery" back="#/licences">
      <Notice>
        <p>The parts this app is drawn with, in their states. Names and figures are made up.</p>
      </Notice>
      <Section title="Ground and type">
        <Tokens />
      </Section>
      <Section title="To act with">
        <Actions />
      </Section>
      <Section title="To enter">
        <Forms />
      </Section>
      <Section title="To tell">
        <Told />
      </Section>
      <Section title="To show">
        <Ribbons />
        <Charts />
      </Section>
      <Section title="Icons">
        <ul class="gallery-icons">
          {ICON_NAMES.map((name) => (
            <li key={name}>
              <Icon name={name} />
              <span class="small quiet">{name}</span>
            </li>
          ))}
        </ul>
      </Section>
    </Screen>
  )
}

function Tokens() {
  return (
    <>
      <Part name="Colour" says="Two grounds and one lamp: colour is kept for light.">
        <ul class="gallery-tokens">
          {[...TOKENS, 'amber'].map((name) => (
            <li key={name}>
              <i style={{ '--shown': `var(--${name})` }} />
              <span class="small quiet">{name}</span>
            </li>
          ))}
        </ul>
      </Part>
      <Part name="Type" says="The system’s own fonts: names in the serif, figures all as wide.">
        <p class="gallery-title">A title</p>
        <p class="gallery-name">The name of a part</p>
        <p>Text, with figures that stand in columns: 1 111, 8 888.</p>
        <p class="small">Small, for what a figure rests on.</p>
      </Part>
    </>
  )
}
