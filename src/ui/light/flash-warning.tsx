import './light.css'
import { Button } from '../common'

export interface FlashWarningProps {
  /** What happens here to light that is over the limit. */
  limit: string
  action: string
  onAccept: () => void
  onBack: () => void
}

/** Shown before the screen becomes a light: for people whom flashes can harm. */
export function FlashWarning({ limit, action, onAccept, onBack }: FlashWarningProps) {
  return (
    <div class="lamp lamp-warning" role="alertdialog" aria-label="Flashing light">
      <h1>Light that changes</h1>
      <p>
        The screen becomes the light, bright and changing. In some people flashes bring on seizures,
        also in those who never had one (about one in 4000 to 6000 people). Look away and stop at
        dizziness, twitching or a strange feeling; do not show it to people who do not expect it.
      </p>
      <p>{limit}</p>
      <p class="quiet">Asked once a visit. Do not stare into bright LEDs either.</p>
      <div class="lamp-foot">
        <Button tone="amber" big wide onClick={onAccept}>
          {action}
        </Button>
        <Button wide onClick={onBack}>
          Back
        </Button>
      </div>
    </div>
  )
}
