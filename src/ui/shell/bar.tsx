import { SHELL } from '../../shared/words/en/shell'
import { Icon } from '../common/icon'
import { path } from '../common/router'

const PLACES = [
  {
    key: 'moves',
    text: SHELL.moves,
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
  { key: 'try', text: SHELL.try, holds: ['try', 'teach', 'stage'] },
  {
    key: 'proof',
    text: SHELL.proof,
    holds: ['proof', 'replay', 'decide', 'compare', 'grip', 'report'],
  },
  { key: 'prop', text: SHELL.prop, holds: ['prop', 'light', 'board'] },
] as const

/** The four places, always at the thumb. */
export function Bar() {
  const here = path.value[0] ?? 'moves'
  return (
    <nav class="bar" aria-label={SHELL.places}>
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
