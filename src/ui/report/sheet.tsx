import { useLayoutEffect, useRef } from 'preact/hooks'
import { reportBody } from '../../shared/report/report'
import type { ReportData } from '../../shared/report/report-data'
import { REPORT_STYLE } from '../../shared/report/report-style'

/**
 * The report as it is printed, in a tree of its own: its style and the app's do not reach each other,
 * but for the colours that it takes from the theme.
 */
export function Sheet({ data }: { data: ReportData }) {
  const host = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const element = host.current
    if (element === null) return
    const root = element.shadowRoot ?? element.attachShadow({ mode: 'open' })
    const style = new CSSStyleSheet()
    style.replaceSync(REPORT_STYLE)
    root.adoptedStyleSheets = [style]
    root.innerHTML = reportBody(data)
  }, [data])
  return <div ref={host} />
}
