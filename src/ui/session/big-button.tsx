import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/** A second tap of a shaking hand comes within this time, and means nothing, ms. */
const STEADY_MS = 500

export interface BigButtonProps {
  /** Amber is for the one thing to do now. */
  tone?: 'amber' | 'plain'
  /** Changes when the button comes to mean something else. */
  meaning: string
  /** Small words under the name. */
  note?: string
  onTap: () => void
  children: ComponentChildren
}

/** A button for a gloved thumb at arm's length; deaf for a moment after it changed its meaning. */
export function BigButton({ tone = 'plain', meaning, note, onTap, children }: BigButtonProps) {
  const steady = useSteady(meaning)
  return (
    <button
      type="button"
      class={`big-button big-button-${tone}`}
      aria-disabled={!steady}
      onClick={() => {
        if (steady) onTap()
      }}
    >
      <span class="big-button-name">{children}</span>
      {note !== undefined && <span>{note}</span>}
    </button>
  )
}

/** Whether what is shown has been there long enough for a tap to be meant for it. */
function useSteady(meaning: string): boolean {
  const [steadyFor, setSteadyFor] = useState<string | null>(null)
  useEffect(() => {
    const timer = setTimeout(() => setSteadyFor(meaning), STEADY_MS)
    return () => clearTimeout(timer)
  }, [meaning])
  return steadyFor === meaning
}
