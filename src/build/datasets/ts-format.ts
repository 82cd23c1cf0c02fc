import { fail, ok, type Result } from '../../shared/model/result'

/** One series of a UEA archive file. */
export interface LabelledSeries {
  label: string
  /** One array of equal length for each dimension. */
  dimensions: Float64Array[]
}

/**
 * Reads the text format of the UEA multivariate archive (Bagnall et al., arXiv:1811.00075): header
 * lines with @ and #, then a line a series with dimensions between colons and the label last.
 * Time stamps and missing values are refused; the sets used here have none.
 */
export function parseTsFormat(text: string, file: string): Result<LabelledSeries[]> {
  const series: LabelledSeries[] = []
  let inData = false
  for (const [index, raw] of text.split('\n').entries()) {
    const line = raw.trim()
    if (line === '' || line.startsWith('#')) continue
    if (!inData) {
      if (/^@timestamps\s+true/i.test(line))
        return fail('ts/timestamps', `${file} has time stamps, which are not read here.`)
      inData = /^@data\b/i.test(line)
      continue
    }
    const parsed = parseSeries(line)
    if (parsed === null) {
      return fail('ts/row', `${file}, line ${index + 1} is not a series of numbers with a label.`)
    }
    series.push(parsed)
  }
  if (series.length === 0) return fail('ts/empty', `${file} holds no series after @data.`)
  return ok(series)
}

function parseSeries(line: string): LabelledSeries | null {
  const fields = line.split(':')
  const label = fields.pop()
  if (label === undefined || label === '' || fields.length === 0) return null
  const dimensions = fields.map((field) => Float64Array.from(field.split(','), Number))
  const length = dimensions[0]?.length ?? 0
  const regular = dimensions.every((d) => d.length === length && d.every(Number.isFinite))
  return regular && length > 1 ? { label, dimensions } : null
}
