import { answersInOrder, lightOf } from '../light/library-light'
import type { SafetyFinding } from '../light/safety'
import type { LightEffect, Step } from '../model/light'
import { cautions } from '../power/cautions'
import { drainSentence } from '../words/en/light-words'
import { durationText } from '../words/en/numbers'
import { headroomSentences } from '../words/en/power-words'
import { instantText } from './head-section'
import { facts, type Html, html, name, section, table } from './html'
import type { ReportData } from './report-data'

/** How the prop answers, and what was counted of flashes and flicker. */
export function lightSection({ light, library }: ReportData): Html {
  const { led, power, minChangeMs, acknowledgement } = lightOf(library)
  const title = 'Effects and safety'
  const drain = drainSentence(lightOf(library))
  const findings = light?.findings ?? []
  return section(
    title,
    light === null
      ? html`<p>Flashes were not counted.</p>`
      : table(
          'Flashes in any second, alone and in turn with every other answer as fast as they are taken; three are the limit of each. A calculation, and no claim of compliance.',
          [
            'Answer',
            'effect',
            'rounds',
            'sound, vibration',
            'general flashes',
            'red flashes',
            'bare LED',
          ],
          answersInOrder(library).map(({ key, name: word, answer }) => [
            name(word),
            answer.light.kind,
            roundsText(answer.light),
            `${stepsText(answer.sound)}, ${stepsText(answer.vibration)}`,
            ...(['general-flash', 'red-flash', 'bare-led'] as const).map((rule) =>
              countCell(findings.find((one) => one.key === key && one.rule === rule)),
            ),
          ]),
        ),
    html`<p>General and red flashes: WCAG 2.2, success criterion 2.3.1, on the light as a screen of full luminance. Bare LED: criterion 2.3.2, counted more strictly.</p>`,
    findings
      .filter(({ rule, passes }) => rule === 'pwm' || !passes)
      .map(({ sentence, where, source }) => html`<p>${sentence} ${where}. ${source}.</p>`),
    facts([
      ['Least time between changes', `${minChangeMs} ms`],
      ['PWM', `${led.pwmHz} Hz, ${led.pwmBits} bits`],
      ['Cells', `${power.series} × ${power.cell}, ${power.supply}`],
      [
        'Over a limit on purpose',
        acknowledgement === null
          ? 'nothing acknowledged'
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

function countCell(finding: SafetyFinding | undefined): string {
  if (finding === undefined) return 'not counted'
  return finding.passes ? `${finding.value}` : `${finding.value}, over the limit`
}

/** How often its round is played, and how long one takes. */
function roundsText({ kind, rounds, periodMs }: LightEffect): string {
  if (kind === 'off') return '–'
  return `${rounds === 0 ? 'on and on' : `${rounds} ×`} ${durationText(periodMs)}`
}

function stepsText(steps: readonly Step[]): string {
  if (steps.length === 0) return 'none'
  return durationText(steps.reduce((sum, { ms }) => sum + ms, 0))
}
