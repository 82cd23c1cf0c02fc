import { useEffect, useRef } from 'preact/hooks'
import { useThemeTurns } from '../theme/use-theme-turns'
import { drawEnergy, type EnergyInk, type EnergyPicture } from './energy-canvas'

export interface EnergyTraceProps {
  picture: EnergyPicture
  /** Said instead of the picture. */
  label: string
}

/** Live motion energy against the thresholds. Draws at most once a frame. */
export function EnergyTrace({ picture, label }: EnergyTraceProps) {
  const ref = useRef<HTMLCanvasElement>(null)
  const turns = useThemeTurns()
  useEffect(() => {
    const frame = requestAnimationFrame(() => {
      if (ref.current !== null) paint(ref.current, picture)
    })
    return () => cancelAnimationFrame(frame)
  }, [picture, turns])
  return <canvas class="energy-trace" ref={ref} role="img" aria-label={label} />
}

function paint(canvas: HTMLCanvasElement, picture: EnergyPicture): void {
  const context = canvas.getContext('2d')
  if (context === null) return
  const width = canvas.clientWidth
  const height = canvas.clientHeight
  const ratio = globalThis.devicePixelRatio
  const deviceWidth = Math.round(width * ratio)
  const deviceHeight = Math.round(height * ratio)
  if (canvas.width !== deviceWidth || canvas.height !== deviceHeight) {
    canvas.width = deviceWidth
    canvas.height = deviceHeight
  }
  context.setTransform(ratio, 0, 0, ratio, 0, 0)
  drawEnergy(context, { width, height }, picture, inkOf(canvas))
}

/** Colours come from the theme, read anew each time: it may change while live. */
function inkOf(canvas: HTMLCanvasElement): EnergyInk {
  const style = getComputedStyle(canvas)
  return {
    line: style.getPropertyValue('--text'),
    quiet: style.getPropertyValue('--text-faint'),
    band: style.getPropertyValue('--halo'),
    ground: style.getPropertyValue('--ground'),
    font: `12px ${style.fontFamily}`,
  }
}
