/** A piece of HTML that is safe to put into a page: made by `html` alone. */
export class Html {
  readonly text: string
  constructor(text: string) {
    this.text = text
  }
}

type Part = Html | string | number | null | false | readonly Part[]

const ENTITIES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/**
 * Controls of direction (Unicode UAX #9) and of teletypes: they could make a name read as another,
 * or turn the text behind it round.
 */
const UNSEEN = /[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu

/** Text as text: markup escaped, unseen controls shown by their number. */
export function escapeText(text: string): string {
  return text
    .replace(/[\t\n\r]+/g, ' ')
    .replace(UNSEEN, (sign) => `[U+${codeOf(sign)}]`)
    .replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? '')
}

function codeOf(sign: string): string {
  return (sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')
}

function textOf(part: Part): string {
  if (part === null || part === false) return ''
  if (part instanceof Html) return part.text
  if (Array.isArray(part)) return (part as readonly Part[]).map(textOf).join('')
  return escapeText(String(part))
}

/** HTML with whatever is put in escaped, unless it is HTML of this kind; null and false are nothing. */
export function html(strings: TemplateStringsArray, ...parts: Part[]): Html {
  return new Html(strings.reduce((text, piece, i) => text + textOf(parts[i - 1] ?? null) + piece))
}

/** A name that people chose: keeps its direction to itself, whatever script it is in. */
export function name(text: string): Html {
  return html`<bdi>${text}</bdi>`
}

/** Text in which what is typed or named as code stands between `. */
export function withCode(text: string): Html {
  return html`${text.split('`').map((part, i) => (i % 2 === 1 ? html`<code>${part}</code>` : part))}`
}

/** A table from heads and rows; the first cell of a row is its head. Scrolls by itself where narrow. */
export function table(caption: string, heads: readonly Part[], rows: Part[][]): Html {
  return html`<div class="wide" tabindex="0" role="group" aria-label="${caption}"><table>
<caption>${caption}</caption>
<thead><tr>${heads.map((head) => (head === '' ? html`<td></td>` : html`<th scope="col">${head}</th>`))}</tr></thead>
<tbody>${rows.map(
    ([first = '', ...rest]) =>
      html`<tr><th scope="row">${first}</th>${rest.map((cell) => html`<td>${cell}</td>`)}</tr>
`,
  )}</tbody>
</table></div>`
}

/** Pairs of a word and what it stands for. */
export function facts(pairs: [string, Part][]): Html {
  return html`<dl>${pairs.map(
    ([term, value]) => html`<div><dt>${term}</dt><dd>${value}</dd></div>
`,
  )}</dl>`
}

export function section(title: string, ...parts: Part[]): Html {
  return html`<section>
<h2>${title}</h2>
${parts.map(
  (part) => html`${part}
`,
)}</section>
`
}
