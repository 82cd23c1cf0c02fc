import type { ComponentChildren } from 'preact'

export interface PartProps {
  name: string
  /** What it is for, one sentence. */
  says: string
  children: ComponentChildren
}

/** One component in its states. */
export function Part({ name, says, children }: PartProps) {
  return (
    <section class="gallery-part" aria-label={name}>
      <h3>{name}</h3>
      <p class="quiet small">{says}</p>
      {children}
    </section>
  )
}

/** A state with its name above it. */
export function State({ name, children }: { name: string; children: ComponentChildren }) {
  return (
    <div class="gallery-state">
      <span class="small quiet">{name}</span>
      {children}
    </div>
  )
}
