import { Button } from './button'

export interface NextStepProps {
  /** What was seen and what it means, one sentence. */
  text: string
  action: string
  href?: string
  onClick?: () => void
  /** Beside another thing that is to be done now. */
  quiet?: boolean
}

/** The next useful step: one sentence with one button, amber where nothing else is. */
export function NextStep({ text, action, href, onClick, quiet = false }: NextStepProps) {
  return (
    <div class="next-step">
      <p>{text}</p>
      <Button
        tone={quiet ? 'plain' : 'amber'}
        wide
        onClick={onClick}
        {...(href === undefined ? {} : { href })}
      >
        {action}
      </Button>
    </div>
  )
}
