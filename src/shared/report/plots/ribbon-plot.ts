import { ribbonShape } from '../../ribbon/outline'
import type { Ribbon } from '../../ribbon/ribbon'
import { REPORT_PLOTS } from '../../words/en/report-plots'
import { type Html, html } from '../html'
import { line, n, type Plot } from './plot'

/** Below this size the halo would hide the path. */
const HALO_FROM = 48

/** A gesture's picture: the path of the prop's tip, from its start dot on. */
export function ribbonPlot(key: string, name: string, ribbon: Ribbon, size: number): Plot {
  const body =
    ribbon.kind === 'path'
      ? path(ribbon, size)
      : ribbon.kind === 'static'
        ? still(ribbon.elevationDeg, size)
        : html``
  return {
    key: `ribbon-${key}`,
    title: REPORT_PLOTS.ribbonOf(name),
    width: size,
    height: size,
    body,
  }
}

function path({ points }: Extract<Ribbon, { kind: 'path' }>, size: number): Html {
  const { halo, body, start } = ribbonShape(points, size)
  return html`${
    size >= HALO_FROM ? html`<path d="${halo}" fill-opacity="0.14"/>` : null
  }<path d="${body}"/><circle cx="${n(start.x)}" cy="${n(start.y)}" r="${n(1.5 + size / 48)}" fill="none" stroke="currentColor"/>`
}

function still(elevationDeg: number, size: number): Html {
  const middle = size / 2
  const angle = (elevationDeg * Math.PI) / 180
  const at = (radius: number) =>
    `${n(middle + radius * Math.cos(angle))} ${n(middle - radius * Math.sin(angle))}`
  return html`${line(`M${n(size * 0.12)} ${middle}H${n(size * 0.88)}`, { opacity: 0.4 })}${line(`M${at(size * 0.1)}L${at(size * 0.38)}`, { width: 2 })}<circle cx="${middle}" cy="${middle}" r="${n(2 + size / 24)}"/>`
}
