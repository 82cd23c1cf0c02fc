import { Button } from './button'

export interface NextStepProps {
  /** What was seen and what it means, one sentence. */
  text: string
  action: string
  href?: string
  onClick?: () => void
}

/** The next useful step: one sentence with one amber button. */
export function NextStep({ text, action, href, onClick }: NextStepProps) {
  return (
    <div class="next-step">
      <p>{text}</p>
      <Button tone="amber" wide onClick={onClick} {...(href === undefined ? {} : { href })}>
        {action}
      </Button>
    </div>
  )
}
