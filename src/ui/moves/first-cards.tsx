import { Icon, type IconName } from '../common/icon'

const CARDS: { icon: IconName; title: string; text: string }[] = [
  {
    icon: 'moves',
    title: 'Move',
    text: 'The phone is the prop. Record each movement a few times; every gesture gets its picture.',
  },
  {
    icon: 'proof',
    title: 'Prove',
    text: 'Takes or people are left out and then recognised: what was understood, and what went wrong.',
  },
  {
    icon: 'prop',
    title: 'Flash',
    text: 'Export the very C files that decided here, with vectors that prove the board.',
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
