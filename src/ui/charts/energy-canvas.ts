import { CHARTS } from '../../shared/words/en/charts'
import type { Cut } from './cuts'
import { rootHeight } from './scale'

/** What the live trace shows: the last `shown` samples, newest at the right edge. */
export interface EnergyPicture {
  energy: Uint32Array
  /** Index one past the newest sample, in the samples of the cuts. */
  end: number
  shown: number
  onThreshold: number
  offThreshold: number
  cuts: Cut[]
}

export interface EnergyInk {
  line: string
  quiet: string
  band: string
  ground: string
  font: string
}

/** Draws energy, thresholds and cut marks. The context is scaled to CSS pixels already. */
export function drawEnergy(
  context: CanvasRenderingContext2D,
  size: { width: number; height: number },
  picture: EnergyPicture,
  ink: EnergyInk,
): void {
  const { width, height } = size
  const top = topOfScale(picture)
  const yOf = (value: number) => rootHeight(value, top, height - 2) + 1
  const xOf = (index: number) => width - ((picture.end - index) / picture.shown) * width
  context.clearRect(0, 0, width, height)
  context.font = ink.font
  context.lineWidth = 1
  drawCuts(context, size, picture.cuts, xOf, ink)
  drawTrace(context, picture, xOf, yOf, ink)
  drawLevels(context, width, picture, yOf, ink)
}

/** Threshold lines; one label for both where two would run into each other. */
function drawLevels(
  context: CanvasRenderingContext2D,
  width: number,
  { onThreshold, offThreshold }: EnergyPicture,
  yOf: (value: number) => number,
  ink: EnergyInk,
): void {
  const starts = CHARTS.starts(onThreshold)
  const ends = CHARTS.ends(offThreshold)
  const [on, off] = [Math.round(yOf(onThreshold)) + 0.5, Math.round(yOf(offThreshold)) + 0.5]
  context.strokeStyle = ink.quiet
  line(context, 0, on, width, on)
  context.setLineDash([4, 4])
  line(context, 0, off, width, off)
  context.setLineDash([])
  const tight = off - on < 16
  drawLabel(
    context,
    tight ? CHARTS.startsAndEnds(onThreshold, offThreshold) : starts,
    4,
    on - 4,
    ink,
  )
  if (!tight) drawLabel(context, ends, 4, off - 4, ink)
}

function topOfScale(picture: EnergyPicture): number {
  let peak = picture.onThreshold * 4
  for (const value of picture.energy) if (value > peak) peak = value
  return peak * 1.05
}

function drawTrace(
  context: CanvasRenderingContext2D,
  picture: EnergyPicture,
  xOf: (index: number) => number,
  yOf: (value: number) => number,
  ink: EnergyInk,
): void {
  const { energy, end, shown } = picture
  const first = Math.max(0, energy.length - shown)
  context.strokeStyle = ink.line
  context.lineWidth = 1.5
  context.beginPath()
  for (let i = first; i < energy.length; i++) {
    const x = xOf(end - energy.length + i + 1)
    const y = yOf(energy[i] ?? 0)
    if (i === first) context.moveTo(x, y)
    else context.lineTo(x, y)
  }
  context.stroke()
  context.lineWidth = 1
}

function drawCuts(
  context: CanvasRenderingContext2D,
  { width, height }: { width: number; height: number },
  cuts: Cut[],
  xOf: (index: number) => number,
  ink: EnergyInk,
): void {
  for (const cut of cuts) {
    const from = xOf(cut.start)
    const to = xOf(cut.end)
    if (to < 0 || from > width) continue
    context.fillStyle = ink.band
    context.fillRect(from, 0, to - from, height)
    context.strokeStyle = ink.line
    context.setLineDash(cut.rejected ? [3, 3] : [])
    line(context, from, 0, from, height)
    line(context, to, 0, to, height)
    context.setLineDash([])
    drawLabel(context, cut.text, Math.max(from, 0) + 4, 13, ink)
  }
}

function drawLabel(
  context: CanvasRenderingContext2D,
  text: string,
  x: number,
  y: number,
  ink: EnergyInk,
): void {
  context.lineWidth = 3
  context.lineJoin = 'round'
  context.strokeStyle = ink.ground
  context.strokeText(text, x, y)
  context.fillStyle = ink.line
  context.fillText(text, x, y)
  context.lineWidth = 1
}

function line(
  context: CanvasRenderingContext2D,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): void {
  context.beginPath()
  context.moveTo(x1, y1)
  context.lineTo(x2, y2)
  context.stroke()
}
