import { MOVES } from '../../shared/words/en/moves'
import { Icon, type IconName } from '../common/icon'

const CARDS: { icon: IconName; title: string; text: string }[] = [
  {
    icon: 'moves',
    title: MOVES.move,
    text: MOVES.moveText,
  },
  {
    icon: 'proof',
    title: MOVES.prove,
    text: MOVES.proveText,
  },
  {
    icon: 'prop',
    title: MOVES.flash,
    text: MOVES.flashText,
  },
]

/** What the app is for, to somebody who never saw it. */
export function FirstCards() {
  return (
    <ol class="first-cards">
      {CARDS.map(({ icon, title, text }) => (
        <li key={title} class="first-card">
          <Icon name={icon} />
          <h2>{title}</h2>
          <p>{text}</p>
        </li>
      ))}
    </ol>
  )
}
