import type { ComponentChildren } from 'preact'

export interface ButtonProps {
  /** 'amber' is for the one thing to do now: at most one on a screen. */
  tone?: 'amber' | 'plain' | 'quiet'
  big?: boolean
  /** Makes it a link to a hash route or a file. */
  href?: string
  onClick?: (() => void) | undefined
  disabled?: boolean
  /** Spoken name where the content is only a picture. */
  label?: string
  pressed?: boolean
  submit?: boolean
  wide?: boolean
  children: ComponentChildren
}

export function Button(props: ButtonProps) {
  const { tone = 'plain', big = false, wide = false, label, pressed, children } = props
  const className = `button button-${tone}${big ? ' button-big' : ''}${wide ? ' button-wide' : ''}`
  if (props.href !== undefined) {
    return (
      <a class={className} href={props.href} aria-label={label} onClick={props.onClick}>
        {children}
      </a>
    )
  }
  return (
    <button
      type={props.submit ? 'submit' : 'button'}
      class={className}
      aria-label={label}
      aria-pressed={pressed}
      disabled={props.disabled}
      onClick={props.onClick}
    >
      {children}
    </button>
  )
}
