import { RibbonView } from './ribbon-view'
import { useRibbon } from './use-ribbon'

export interface GestureRibbonProps {
  gestureId: string
  /** Width and height, CSS px. */
  size: number
  /** Spoken name, where no text beside it says the same. */
  label?: string
  draw?: boolean
}

/** The picture of a gesture of the open library, made from its takes. Keeps its place while empty. */
export function GestureRibbon({ gestureId, size, label, draw = false }: GestureRibbonProps) {
  const ribbon = useRibbon(gestureId) ?? { kind: 'none' as const }
  return (
    <RibbonView
      ribbon={ribbon}
      size={size}
      draw={draw}
      {...(label === undefined ? {} : { label })}
    />
  )
}
