import { fileWord } from '../../shared/format/file-names'
import { reportFile } from '../../shared/report/report'
import type { ReportData } from '../../shared/report/report-data'

/** Start of the names of all files of a report: library and day. */
export function fileStem({ library, madeAt }: ReportData): string {
  return `${fileWord(library.name, 'library')}-${madeAt.slice(0, 10)}`
}

/** The report as one HTML file that needs nothing else. */
export function htmlFile(data: ReportData): { fileName: string; bytes: Uint8Array } {
  return {
    fileName: `${fileStem(data)}-report.html`,
    bytes: new TextEncoder().encode(reportFile(data)),
  }
}
