import type { RecogniserModel } from '../model/recogniser-model'
import { plain } from './markdown-text'
import { type Vector, vectorNumber } from './vector'

/** `vectors/README.md`: what each vector shows, how it was made and what must come of it. */
export function vectorsReadme(model: RecogniserModel, vectors: readonly Vector[]): string {
  const rows = vectors.map(({ why, from, log }, index) => {
    const cells = [vectorNumber(index), why, from, answerOf(model, log)]
    return `| ${cells.map(plain).join(' | ')} |`
  })
  return `# Vectors

Samples as the board reads them, each with the event log that the phone's recogniser gave. Every
build must give the same, to the byte: they are run on the desk (\`make test\`) and on the board
(\`INTEGRATION.md\`, "Self-test on the board").

They prove that the board computes what the phone computes. They do not prove that the gestures are
well chosen or recognised in other hands; the evaluation on the phone says that.

| | shows | made from | must give |
|---|---|---|---|
${rows.join('\n')}

Takes are chosen from the library, after training, by what the model said to them, so the same library
and training give the same vectors. A kind that no take shows is missing. What is made by rule fills
in what hands do not do. To argue with one, change its samples and run it:
\`build/run-vectors vectors/01-*.in\` prints the log and the first difference.

## Input

\`NN-name.in\` is read line by line:

| line | does |
|---|---|
| \`ax ay az gx gy gz\` | pushes a sample: six integers in counts, board axes |
| \`button 1\`, \`button 0\` | \`mvw_button()\` |
| \`reset\` | \`mvw_reset()\`; samples count from 0 again |
| \`teach <gesture>\` | \`mvw_teach_begin()\`, 3 movements and 2 slots; from here on events go through \`mvw_teach_event()\` |
| \`forget <gesture>\` | \`mvw_teach_forget()\` |
| \`board <mHz> <ng> <ndeg/s>\` | changes the setting given to \`mvw_init()\` |
| \`version <n>\` | changes the version the model claims |
| \`memory <ring> <query> <row>\` | sizes of the buffers given, in entries, at most what there is |
| \`bytes <hexadecimal>\`, \`read\` | gathers model bytes, then gives them to \`mvw_model_read()\` |
| \`# text\` | nothing |

\`mvw_init()\` is called at the first sample, button or reset, or at the end.

## Event log

    read <status>
    init <status>
    teach <status or number of the gesture>
    forget <status>
    taught <more|done|cut|unlike|near> <movements> <nearest other> <its distance> <spread> <threshold>
    event <start> <end> <gesture|reject> <nearest> <reason> <roll> <distance> <threshold> <runner-up> <runner-up distance>
    end <samples>

A status is 0 or one of \`enum mvw_status\` in \`core/movewright.h\`. Samples count from 0 at the last
reset and \`<end>\` is one past the last of the movement; gestures are numbered as in \`README.md\`; \`-\`
is none.
`
}

/** The log in words: what was refused, or each event. */
function answerOf(model: RecogniserModel, log: string): string {
  const lines = log.split('\n')
  const refused = lines.flatMap((line) => {
    const [, what, status] = line.match(/^(read|init) (-\d+)$/) ?? []
    return what === undefined ? [] : [`${what === 'read' ? 'bytes' : 'start'} refused (${status})`]
  })
  const said = lines.flatMap((line) => {
    if (line.startsWith('event ')) return [eventOf(model, line)]
    return line.startsWith('taught ') ? [taughtOf(model, line)] : []
  })
  const all = [...refused, ...said]
  return all.length === 0 ? 'no event' : all.join('; ')
}

function taughtOf(model: RecogniserModel, line: string): string {
  const [, what, count, nearest, , , threshold] = line.split(' ')
  if (what === 'done') return `taught with ${count}, threshold ${threshold}`
  if (what !== 'near') return `taught, ${what}`
  return `not taught, too near ${model.gestures[Number(nearest)]?.name ?? nearest}`
}

function eventOf(model: RecogniserModel, line: string): string {
  const [, , , kind, nearest, reason, , distance, threshold] = line.split(' ')
  if (nearest === undefined || nearest === '-') return `rejected, ${reason}`
  const name = model.gestures[Number(nearest)]?.name ?? nearest
  const answer = kind === 'gesture' ? name : `rejected, ${reason}, nearest ${name}`
  return `${answer} (${distance} of ${threshold})`
}
