import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { evaluateLibrary } from '../shared/evaluation/evaluate-library'
import type { Holdout } from '../shared/model/evaluation'
import { fail, ok, type Result } from '../shared/model/result'
import type { OnProgress } from '../shared/protocol/recogniser'
import { reportFile } from '../shared/report/report'
import type { MatcherWish } from '../shared/training/kernel/fit-matcher'
import { evaluationTable } from './bench/evaluation-table'
import { readLibraryAt } from './datasets/read-library'
import { decideAll, decisionText } from './decisions'
import { loadCoreForNode } from './load-core'
import { reportDataOf } from './report-data'

const USAGE = `npm run evaluate -- PATH [--holdout tester|take] [--matcher template|kernel|auto] [--json]
                                 [--report FILE.html [--grip]] [--decide [--tolerance POINTS]]

PATH is a library file (.zip) or a folder of CSV takes named gesture/tester_number.csv.
--holdout tester  (default) no tester is in both training and test: how it does for strangers
--holdout take    one take in five is held out: how it does for people it knows
--matcher auto    (default) templates, kernel features or both, whatever held-out testers speak for
--json            the whole evaluation as JSON instead of a table
--report FILE     writes the app's report too: one HTML page that needs nothing else
--grip            measures grip tolerance for the report as well, which takes minutes
--decide          also decides which gestures, how much data and which sensor; takes minutes
--tolerance 2     points of accuracy that a cheaper sensor may lose`

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
    const { holdout, json, grip, decide, report = null } = values
    return ok({ path, holdout, matcher, json, report, grip, decide, tolerance: points / 100 })
  } catch (error) {
    return fail('usage', `${error instanceof Error ? error.message : error}\n\n${USAGE}`)
  }
}

const tell: OnProgress = ({ done, total, what }) => {
  process.stderr.write(`${done}/${total} ${what}\n`)
}

async function run(args: string[]): Promise<Result<string>> {
  const request = readRequest(args)
  if (!request.ok) return request
  const { path, holdout, matcher, json, report, grip, decide, tolerance } = request.value
  const library = readLibraryAt(path)
  if (!library.ok) return library
  const core = await loadCoreForNode()
  const evaluation = await evaluateLibrary(core, library.value, holdout, tell, { matcher })
  if (!evaluation.ok) return evaluation
  if (report !== null) {
    const wishes = { matcher, grip }
    const data = await reportDataOf(core, library.value, evaluation.value, wishes, tell)
    if (!data.ok) return data
    writeFileSync(report, reportFile(data.value))
    process.stderr.write(`${report} written\n`)
  }
  const decisions = decide ? await decideAll(core, library.value, tolerance, tell) : null
  if (json) {
    const all = decisions === null ? evaluation.value : { ...evaluation.value, decisions }
    return ok(JSON.stringify(all, null, 2))
  }
  const table = evaluationTable(evaluation.value)
  return ok(decisions === null ? table : `${table}\n\n${decisionText(decisions)}`)
}

const result = await run(process.argv.slice(2))
if (result.ok) {
  process.stdout.write(`${result.value}\n`)
} else {
  process.stderr.write(`${result.message}\n`)
  process.exitCode = result.message === USAGE && process.argv.includes('--help') ? 0 : 1
}
