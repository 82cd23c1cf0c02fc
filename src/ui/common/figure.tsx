import type { ComponentChildren } from 'preact'

export interface FigureProps {
  label: string
  value: ComponentChildren
  /** Always given where the value has one. */
  unit?: string
  /** Such as 'n = 40' or an interval. */
  note?: ComponentChildren
}

/** One figure with its unit and what it rests on. */
export function Figure({ label, value, unit, note }: FigureProps) {
  return (
    <div class="figure">
      <span class="figure-label">{label}</span>
      <span class="figure-value">
        {value}
        {unit !== undefined && <span class="figure-unit"> {unit}</span>}
      </span>
      {note !== undefined && <span class="figure-note">{note}</span>}
    </div>
  )
}
