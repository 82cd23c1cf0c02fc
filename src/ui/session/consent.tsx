import { useEffect, useRef } from 'preact/hooks'
import { BigButton } from './big-button'

export interface ConsentProps {
  title: string
  onAgree: () => void
  onRefuse: () => void
}

/** What is recorded, what for, and how to take it back: agreed to before anything is stored. */
export function Consent({ title, onAgree, onRefuse }: ConsentProps) {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    dialog.current?.showModal()
  }, [])
  return (
    <dialog ref={dialog} class="consent" aria-labelledby="consent-title" onCancel={onRefuse}>
      <h2 id="consent-title">Is this all right with you?</h2>
      <ul class="consent-list">
        <li>
          <strong>Motion only.</strong> While you perform, this phone records how it moves and
          turns. No sound, no picture, no place, no name.
        </li>
        <li>
          <strong>What for.</strong> A prop learns to tell these movements apart: {title}.
        </li>
        <li>
          <strong>Yours.</strong> It stays on this phone until you hand it over. You can stop at any
          moment, and have it deleted at any time by a code that you are given.
        </li>
      </ul>
      <div class="consent-buttons">
        <BigButton meaning="refuse" onTap={onRefuse}>
          No, thank you
        </BigButton>
        <BigButton tone="amber" meaning="agree" onTap={onAgree}>
          I agree
        </BigButton>
      </div>
    </dialog>
  )
}
