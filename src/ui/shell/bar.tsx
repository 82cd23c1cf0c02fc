import { Icon } from '../common/icon'
import { path } from '../common/router'

const PLACES = [
  {
    key: 'moves',
    text: 'Moves',
    holds: [
      'moves',
      'gesture',
      'record',
      'background',
      'collect',
      'library',
      'backup',
      'import',
      'licences',
      'gallery',
    ],
  },
  { key: 'try', text: 'Try', holds: ['try', 'teach', 'stage'] },
  {
    key: 'proof',
    text: 'Proof',
    holds: ['proof', 'replay', 'decide', 'compare', 'grip', 'report'],
  },
  { key: 'prop', text: 'Prop', holds: ['prop', 'light', 'board'] },
] as const

/** The four places, always at the thumb. */
export function Bar() {
  const here = path.value[0] ?? 'moves'
  return (
    <nav class="bar" aria-label="Places">
      {PLACES.map((place) => (
        <a
          key={place.key}
          href={`#/${place.key}`}
          class="bar-place"
          aria-current={(place.holds as readonly string[]).includes(here) ? 'page' : undefined}
        >
          <Icon name={place.key} />
          <span>{place.text}</span>
        </a>
      ))}
    </nav>
  )
}
