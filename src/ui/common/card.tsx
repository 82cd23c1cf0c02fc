import type { ComponentChildren } from 'preact'

export interface CardProps {
  /** Makes the whole card a link. */
  href?: string
  children: ComponentChildren
}

export function Card({ href, children }: CardProps) {
  return href === undefined ? (
    <div class="card">{children}</div>
  ) : (
    <a class="card card-link" href={href}>
      {children}
    </a>
  )
}

export interface SectionProps {
  title: string
  aside?: ComponentChildren
  children: ComponentChildren
}

/** A titled part of a screen. */
export function Section({ title, aside, children }: SectionProps) {
  return (
    <section class="section">
      <header class="section-head">
        <h2>{title}</h2>
        {aside}
      </header>
      {children}
    </section>
  )
}
