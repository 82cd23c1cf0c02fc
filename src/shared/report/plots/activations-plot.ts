import type { BackgroundScore } from '../../model/evaluation'
import { shortNumber } from '../../words/en/numbers'
import { REPORT_PLOTS } from '../../words/en/report-plots'
import { html } from '../html'
import { label, line, n, type Plot } from './plot'

const WIDTH = 640
const HEIGHT = 56
const Y = 20

/** False activations an hour on a line with their exact interval. */
export function activationsPlot({ perHour, low, high }: BackgroundScore): Plot {
  const top = Math.max(high * 1.1, 1)
  const x = (value: number) => 8 + ((WIDTH - 16) * value) / top
  const ends = `M${n(x(low))} ${Y}H${n(x(high))}M${n(x(low))} ${Y - 6}v12M${n(x(high))} ${Y - 6}v12`
  const body = html`${line(`M8 ${Y}H${WIDTH - 8}`, { opacity: 0.25 })}${line(ends, { width: 1.5 })}<circle cx="${n(x(perHour))}" cy="${Y}" r="4"/>
${label(8, Y + 26, '0')}${label(x(high), Y + 26, shortNumber(high), 'middle')}${label(WIDTH - 8, Y + 26, REPORT_PLOTS.anHour, 'end')}${
  x(low) > 60 ? label(x(low), Y + 26, shortNumber(low), 'middle') : null
}`
  const title = REPORT_PLOTS.activations
  return { key: 'false-activations', title, width: WIDTH, height: HEIGHT, body }
}
