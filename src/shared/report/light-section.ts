import { answersInOrder, lightOf } from '../light/library-light'
import type { SafetyFinding } from '../light/safety'
import type { LightEffect, Step } from '../model/light'
import { cautions } from '../power/cautions'
import { CELL_PRESETS } from '../power/cells'
import { instantText } from '../words/en/instant'
import { drainSentence } from '../words/en/light-words'
import { durationText } from '../words/en/numbers'
import { headroomSentences } from '../words/en/power-words'
import { REPORT_LIGHT } from '../words/en/report-light'
import { facts, type Html, html, name, section, table } from './html'
import type { ReportData } from './report-data'

/** How the prop answers, and what was counted of flashes and flicker. */
export function lightSection({ light, library }: ReportData): Html {
  const { led, power, minChangeMs, acknowledgement } = lightOf(library)
  const title = REPORT_LIGHT.title
  const drain = drainSentence(lightOf(library))
  const findings = light?.findings ?? []
  return section(
    title,
    light === null
      ? html`<p>${REPORT_LIGHT.notCounted}</p>`
      : table(
          REPORT_LIGHT.caption,
          REPORT_LIGHT.heads,
          answersInOrder(library).map(({ key, name: word, answer }) => [
            name(word),
            REPORT_LIGHT.effects[answer.light.kind],
            roundsText(answer.light),
            `${stepsText(answer.sound)}, ${stepsText(answer.vibration)}`,
            ...(['general-flash', 'red-flash', 'bare-led'] as const).map((rule) =>
              countCell(findings.find((one) => one.key === key && one.rule === rule)),
            ),
          ]),
        ),
    html`<p>${REPORT_LIGHT.criteria}</p>`,
    findings
      .filter(({ rule, passes }) => rule === 'pwm' || !passes)
      .map(({ sentence, where, source }) => html`<p>${sentence} ${where}. ${source}.</p>`),
    facts([
      [REPORT_LIGHT.leastTime, `${minChangeMs} ms`],
      [REPORT_LIGHT.pulseWidth, REPORT_LIGHT.pwm(led.pwmHz, led.pwmBits)],
      [REPORT_LIGHT.cells, REPORT_LIGHT.fed(power.series, cellName(power.cell), power.supply)],
      [
        REPORT_LIGHT.onPurpose,
        acknowledgement === null
          ? REPORT_LIGHT.nothingAcknowledged
          : html`<bdi>${acknowledgement.text}</bdi> (${instantText(acknowledgement.at)})`,
      ],
    ]),
    drain === null ? null : html`<p>${drain}</p>`,
    headroomSentences(power, led).map((sentence) => html`<p>${sentence}</p>`),
    html`<ul>${cautions(power).map(
      (sentence) => html`<li>${sentence}</li>
`,
    )}</ul>`,
  )
}

function cellName(key: string): string {
  return CELL_PRESETS.find((preset) => preset.key === key)?.name ?? REPORT_LIGHT.custom
}

function countCell(finding: SafetyFinding | undefined): string {
  if (finding === undefined) return REPORT_LIGHT.cellNotCounted
  return finding.passes ? `${finding.value}` : REPORT_LIGHT.overLimit(finding.value)
}

/** How often its round is played, and how long one takes. */
function roundsText({ kind, rounds, periodMs }: LightEffect): string {
  if (kind === 'off') return '–'
  return REPORT_LIGHT.rounds(rounds, durationText(periodMs))
}

function stepsText(steps: readonly Step[]): string {
  if (steps.length === 0) return REPORT_LIGHT.none
  return durationText(steps.reduce((sum, { ms }) => sum + ms, 0))
}
