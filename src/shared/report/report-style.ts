/**
 * Style of a report: of the file, and of the page that shows it. Colours come from the page around it
 * where that has any; on paper it is ink on white.
 */
export const REPORT_STYLE = `
.report {
  --report-ink: var(--text, #1b2230);
  --report-quiet: var(--text-quiet, #4b5160);
  --report-line: var(--line-strong, #b9b2a4);
  color: var(--report-ink);
  font: 400 14px/1.4 system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", sans-serif;
  font-variant-numeric: tabular-nums;
  overflow-wrap: anywhere;
}
.report * { box-sizing: border-box; }
.report h1, .report h2 {
  margin: 0;
  font: 500 26px/1.2 ui-serif, "Iowan Old Style", Palatino, "Noto Serif", Georgia, serif;
  text-wrap: balance;
}
.report h2 { margin: 28px 0 8px; font-size: 19px; break-after: avoid; }
.report p, .report ul, .report ol, .report dl, .report figure { margin: 8px 0; padding: 0; }
.report ul, .report ol { padding-left: 20px; }
.report .mark { display: inline-block; padding: 1px 8px; border: 1px dashed var(--report-line); border-radius: 8px; }
.report .answers { display: flex; flex-wrap: wrap; gap: 12px 40px; margin: 16px 0; }
.report .answers div { display: grid; max-width: 300px; }
.report .answers b { font-size: 28px; font-weight: 500; line-height: 1.2; }
.report .answers span, .report small, .report caption, .report dt, .report thead th { color: var(--report-quiet); font-size: 12px; }
.report table { width: 100%; margin: 12px 0; border-collapse: collapse; font-size: 13px; }
.report caption { padding-bottom: 4px; text-align: left; }
.report th, .report td { padding: 3px 8px 3px 0; border-bottom: 1px solid var(--report-line); text-align: left; vertical-align: top; font-weight: 400; overflow-wrap: break-word; }
.report tbody th { font-weight: 600; }
.report tr { break-inside: avoid; }
.report td svg { width: 36px; }
.report figure { break-inside: avoid; }
.report svg { display: block; max-width: 100%; height: auto; }
.report dl { display: grid; grid-template-columns: repeat(auto-fill, minmax(240px, 1fr)); gap: 6px 24px; }
.report dl { break-inside: avoid; }
.report dl div { min-width: 0; }
.report dd { margin: 0; }
.report code { font: 12px/1.4 ui-monospace, "SF Mono", "Roboto Mono", "DejaVu Sans Mono", monospace; overflow-wrap: anywhere; }
@media screen {
  .report .wide { overflow-x: auto; }
  .report .wide > svg { max-width: none; }
}
@media (max-width: 500px) {
  .report table { font-size: 12px; }
  .report th, .report td { padding-right: 6px; }
}
@media print {
  .report {
    --report-ink: #000;
    --report-quiet: #333;
    --report-line: #bbb;
    font-size: 9.5pt;
  }
  .report h1 { font-size: 18pt; }
  .report h2 { margin-top: 14pt; font-size: 13pt; }
  .report .answers b { font-size: 19pt; }
  .report table { font-size: 8.5pt; }
  .report dt, .report small, .report caption, .report thead th, .report .answers span { font-size: 8pt; }
  .report thead { display: table-header-group; }
  .report dl { grid-template-columns: repeat(auto-fill, minmax(150px, 1fr)); gap: 3pt 12pt; }
  .report figure svg { width: auto; max-height: 84mm; }
  .report td svg { width: 26px; height: 26px; }
  .report table, .report figure { margin: 7pt 0; }
  .report th, .report td { padding-block: 1.5pt; }
  .report p, .report li { orphans: 3; widows: 3; }
}
`

/** Of the file alone: its ground, its margins, and night where the reader has it. */
export const FILE_STYLE = `
@page { margin: 14mm; }
body { max-width: 820px; margin: 0 auto; padding: 24px 16px 48px; background: #fff; }
@media screen and (prefers-color-scheme: dark) {
  body { background: #0a0f1b; --text: #f5eee1; --text-quiet: #b3b9c6; --line-strong: #3d4963; }
}
@media print { body { max-width: none; padding: 0; background: none; } }
`
