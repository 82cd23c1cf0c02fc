import { type Html, html } from '../html'

/** A picture that stands for itself: SVG in ink of the page it is put on. */
export interface Plot {
  /** Word for a file's name. */
  key: string
  title: string
  width: number
  height: number
  /** The inside of the svg element. */
  body: Html
}

export type Place = readonly [x: number, y: number]

const FONT = 'system-ui, -apple-system, Segoe UI, Roboto, Noto Sans, sans-serif'

/** A small picture within a line or a cell. */
export function inlinePlot({ title, width, height, body }: Plot): Html {
  return html`<svg viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" fill="currentColor"><title>${title}</title>${body}</svg>`
}

/** Within a page: ink is the page's. The title is spoken and shown nowhere else. */
export function plotHtml({ title, width, height, body }: Plot): Html {
  return html`<figure class="wide" tabindex="0">
<svg viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" font-family="${FONT}" font-size="11" fill="currentColor"><title>${title}</title>${body}</svg>
</figure>`
}

/** A file of its own: ink on white. */
export function plotFile({ title, width, height, body }: Plot): string {
  return html`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="${FONT}" font-size="11" fill="currentColor" color="#1b2230"><title>${title}</title><rect width="${width}" height="${height}" fill="#fff"/>${body}</svg>
`.text
}

export function n(value: number): string {
  return String(Math.round(value * 100) / 100)
}

export function pathOf(places: readonly Place[]): string {
  return places.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${n(x)} ${n(y)}`).join('')
}

export interface LineStyle {
  width?: number
  dash?: string
  /** 0 to 1. */
  opacity?: number
}

export function line(d: string, { width = 1, dash = '', opacity = 1 }: LineStyle = {}): Html {
  return html`<path d="${d}" fill="none" stroke="currentColor" stroke-width="${width}"${
    dash === '' ? null : html` stroke-dasharray="${dash}"`
  }${opacity === 1 ? null : html` stroke-opacity="${opacity}"`}/>`
}

/** Text at a place; 'start', 'middle' or 'end' of it lies there. */
export function label(
  x: number,
  y: number,
  text: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
  strong = false,
): Html {
  return html`<text x="${n(x)}" y="${n(y)}" text-anchor="${anchor}"${
    strong ? html` font-weight="600"` : null
  }>${text}</text>`
}

/** A name cut to the room a plot has; the tables have it whole. */
export function short(text: string, letters: number): string {
  const signs = [...text]
  return signs.length <= letters ? text : `${signs.slice(0, letters - 1).join('')}…`
}
