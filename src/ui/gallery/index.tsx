import './gallery.css'
import { GALLERY } from '../../shared/words/en/gallery'
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
    <Screen title={GALLERY.title} back="#/licences">
      <Notice>
        <p>{GALLERY.lead}</p>
      </Notice>
      <Section title={GALLERY.groundAndType}>
        <Tokens />
      </Section>
      <Section title={GALLERY.toActWith}>
        <Actions />
      </Section>
      <Section title={GALLERY.toEnter}>
        <Forms />
      </Section>
      <Section title={GALLERY.toTell}>
        <Told />
      </Section>
      <Section title={GALLERY.toShow}>
        <Ribbons />
        <Charts />
      </Section>
      <Section title={GALLERY.icons}>
        <ul class="gallery-icons" translate={false}>
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
      <Part name={GALLERY.colour} says={GALLERY.colourSays}>
        <ul class="gallery-tokens" translate={false}>
          {[...TOKENS, 'amber'].map((name) => (
            <li key={name}>
              <i style={{ '--shown': `var(--${name})` }} />
              <span class="small quiet">{name}</span>
            </li>
          ))}
        </ul>
      </Part>
      <Part name={GALLERY.type} says={GALLERY.typeSays}>
        <p class="gallery-title">{GALLERY.aTitle}</p>
        <p class="gallery-name">{GALLERY.partName}</p>
        <p>{GALLERY.textExample}</p>
        <p class="small">{GALLERY.smallExample}</p>
      </Part>
    </>
  )
}
