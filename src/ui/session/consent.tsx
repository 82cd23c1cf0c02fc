import { useEffect, useRef } from 'preact/hooks'
import { SESSION_JOIN } from '../../shared/words/en/session-join'
import { BigButton } from './big-button'

export interface ConsentProps {
  title: string
  onAgree: () => void
  onRefuse: () => void
}

/** What is recorded, what for, and how to take it back: agreed to before anything is stored. */
export function Consent({ title, onAgree, onRefuse }: ConsentProps) {
  const words = SESSION_JOIN.consent
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    dialog.current?.showModal()
  }, [])
  return (
    <dialog ref={dialog} class="consent" aria-labelledby="consent-title" onCancel={onRefuse}>
      <h2 id="consent-title">{SESSION_JOIN.consent.title}</h2>
      <ul class="consent-list">
        {[words.motionOnly, words.whatFor(title), words.yours].map(({ strong, text }) => (
          <li key={strong}>
            <strong>{strong}</strong> {text}
          </li>
        ))}
      </ul>
      <div class="consent-buttons">
        <BigButton meaning="refuse" onTap={onRefuse}>
          {SESSION_JOIN.consent.refuse}
        </BigButton>
        <BigButton tone="amber" meaning="agree" onTap={onAgree}>
          {SESSION_JOIN.consent.agree}
        </BigButton>
      </div>
    </dialog>
  )
}
