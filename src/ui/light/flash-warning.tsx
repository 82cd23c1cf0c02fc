import './light.css'
import { LIGHT_ANSWERS } from '../../shared/words/en/light-answers'
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
    <div class="lamp lamp-warning" role="alertdialog" aria-label={LIGHT_ANSWERS.warning.label}>
      <h1>{LIGHT_ANSWERS.warning.title}</h1>
      <p>{LIGHT_ANSWERS.warning.seizures}</p>
      <p>{limit}</p>
      <p class="quiet">{LIGHT_ANSWERS.warning.onceAVisit}</p>
      <div class="lamp-foot">
        <Button tone="amber" big wide onClick={onAccept}>
          {action}
        </Button>
        <Button wide onClick={onBack}>
          {LIGHT_ANSWERS.warning.back}
        </Button>
      </div>
    </div>
  )
}
