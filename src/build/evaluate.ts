import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { evaluateInParts } from '../shared/evaluation/evaluate-library'
import type { Holdout } from '../shared/model/evaluation'
import type { FullLibrary, TrainingSettings } from '../shared/model/library'
import { fail, ok, type Result } from '../shared/model/result'
import type { OnProgress } from '../shared/protocol/recogniser'
import { reportFile } from '../shared/report/report'
import type { MatcherWish } from '../shared/training/kernel/fit-matcher'
import {
  againstText,
  type MeasuredLibrary,
  readSettings,
  reportAgainst,
  withSettings,
} from './against'
import { evaluationTable } from './bench/evaluation-table'
import { readLibraryAt } from './datasets/read-library'
import { decideAll, decisionText } from './decisions'
import { loadCoreForNode } from './load-core'
import { partsOnThreads } from './parts-on-threads'
import { reportDataOf } from './report-data'
import { type TeachReport, teachReport, teachText } from './teach-cost'

const USAGE = `npm run evaluate -- PATH [--holdout tester|take] [--matcher template|kernel|auto] [--json]
                                 [--report FILE.html [--grip]] [--decide [--tolerance POINTS]]
                                 [--against PATH] [--with SETTINGS] [--against-with SETTINGS]
                                 [--teach NAME]

PATH is a library file (.zip) or a folder of CSV takes named gesture/tester_number.csv.
--holdout tester  (default) no tester is in both training and test: how it does for strangers
--holdout take    one take in five is held out: how it does for people it knows
--matcher auto    (default) templates, kernel features or both, whatever held-out testers speak for
--json            the whole evaluation as JSON instead of a table
--report FILE     writes the app's report too: one HTML page that needs nothing else
--grip            measures grip tolerance for the report as well, which takes minutes
--decide          also decides which gestures, how much data and which sensor; takes minutes
--tolerance 2     points of accuracy that a cheaper sensor may lose
--against PATH    measures a second library too: what changed, which takes flipped, exact McNemar
--with SETTINGS   other training settings, such as length=32,rollAlign=false
--against-with SETTINGS   the same for the second library, which is PATH where --against is missing
--teach NAME      what it costs the others when this gesture is taught on the prop, not trained`

const MATCHERS = ['template', 'kernel', 'auto'] as const

interface Request {
  path: string
  holdout: Holdout
  matcher: MatcherWish
  json: boolean
  /** File to write, or null. */
  report: string | null
  grip: boolean
  decide: boolean
  /** Loss that is accepted, as a share of takes. */
  tolerance: number
  settings: Partial<TrainingSettings>
  against: { path: string; settings: Partial<TrainingSettings> } | null
  /** Name of a gesture, or null. */
  teach: string | null
}

function readRequest(args: string[]): Result<Request> {
  const options = {
    holdout: { type: 'string', default: 'tester' },
    matcher: { type: 'string', default: 'auto' },
    json: { type: 'boolean', default: false },
    report: { type: 'string' },
    grip: { type: 'boolean', default: false },
    decide: { type: 'boolean', default: false },
    tolerance: { type: 'string', default: '2' },
    against: { type: 'string' },
    with: { type: 'string', default: '' },
    'against-with': { type: 'string' },
    teach: { type: 'string' },
    help: { type: 'boolean', default: false },
  } as const
  try {
    const { values, positionals } = parseArgs({ args, options, allowPositionals: true })
    const [path, ...more] = positionals
    if (values.help || path === undefined || more.length > 0) return fail('usage', USAGE)
    if (values.holdout !== 'tester' && values.holdout !== 'take') {
      return fail('usage', `--holdout is tester or take, not ${values.holdout}.`)
    }
    const matcher = MATCHERS.find((name) => name === values.matcher)
    if (matcher === undefined) {
      return fail('usage', `--matcher is ${MATCHERS.join(', ')}, not ${values.matcher}.`)
    }
    if (values.grip && values.report === undefined) {
      return fail('usage', '--grip measures for the report: give --report FILE.html with it.')
    }
    const points = Number(values.tolerance)
    if (!(points > 0 && points <= 50)) {
      return fail('usage', `--tolerance is points from above 0 to 50, not ${values.tolerance}.`)
    }
    const { holdout, json, grip, decide, report = null, teach = null } = values
    const settings = readSettings(values.with)
    const other = readSettings(values['against-with'] ?? '')
    if (!settings.ok) return settings
    if (!other.ok) return other
    const compared = values.against !== undefined || values['against-with'] !== undefined
    const against = compared ? { path: values.against ?? path, settings: other.value } : null
    const wishes = { json, report, grip, decide, tolerance: points / 100, teach }
    return ok({ path, holdout, matcher, ...wishes, settings: settings.value, against })
  } catch (error) {
    return fail('usage', `${error instanceof Error ? error.message : error}\n\n${USAGE}`)
  }
}

let told = ''

const tell: OnProgress = ({ done, total, what }) => {
  // Parts tell fractions; a line for each whole step is enough.
  const line = `${Math.floor(done)}/${total} ${what}\n`
  if (line !== told) process.stderr.write(line)
  told = line
}

async function run(args: string[]): Promise<Result<string>> {
  const request = readRequest(args)
  if (!request.ok) return request
  const { path, matcher, json, report, grip, decide, tolerance, settings, against, teach } =
    request.value
  const core = await loadCoreForNode()
  const measured = await measure(request.value, { path, settings })
  if (!measured.ok) return measured
  const { full, evaluation } = measured.value
  if (report !== null) {
    const wishes = { matcher: settings.matcher ?? matcher, grip }
    const data = await reportDataOf(core, full, evaluation, wishes, tell)
    if (!data.ok) return data
    writeFileSync(report, reportFile(data.value))
    process.stderr.write(`${report} written\n`)
  }
  const other = against && (await measure(request.value, against))
  if (other?.ok === false) return other
  const compared = other && reportAgainst(measured.value, other.value)
  if (compared?.ok === false) return compared
  const taught = teach === null ? null : await teachHere(full, teach)
  if (taught?.ok === false) return taught
  const decisions = decide ? await decideAll(core, full, tolerance, tell) : null
  if (json) {
    const extra = {
      ...(decisions && { decisions }),
      ...(taught && { teach: taught.value }),
      ...(other && { against: { evaluation: other.value.evaluation, ...compared?.value } }),
    }
    return ok(JSON.stringify({ ...evaluation, ...extra }, null, 2))
  }
  const tables = [evaluationTable(evaluation)]
  if (other) tables.push(evaluationTable(other.value.evaluation))
  if (compared) tables.push(againstText(compared.value))
  if (taught) tables.push(teachText(taught.value))
  if (decisions) tables.push(decisionText(decisions))
  return ok(tables.join('\n\n'))
}

async function teachHere(full: FullLibrary, name: string): Promise<Result<TeachReport>> {
  const threads = partsOnThreads()
  const report = await teachReport(threads.run, full, name, tell)
  threads.end()
  return report
}

/** Reads and measures one library, on all cores. */
async function measure(
  { holdout, matcher }: Request,
  { path, settings }: { path: string; settings: Partial<TrainingSettings> },
): Promise<Result<MeasuredLibrary>> {
  const library = readLibraryAt(path)
  if (!library.ok) return library
  const full = withSettings(library.value, settings)
  const threads = partsOnThreads()
  const evaluation = await evaluateInParts(threads.run, full, holdout, tell, {
    matcher: settings.matcher ?? matcher,
  })
  threads.end()
  return evaluation.ok ? ok({ full, evaluation: evaluation.value }) : evaluation
}

const result = await run(process.argv.slice(2))
if (result.ok) {
  process.stdout.write(`${result.value}\n`)
} else {
  process.stderr.write(`${result.message}\n`)
  process.exitCode = result.message === USAGE && process.argv.includes('--help') ? 0 : 1
}
