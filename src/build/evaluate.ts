import { parseArgs } from 'node:util'
import { evaluateLibrary } from '../shared/evaluation/evaluate-library'
import type { Holdout } from '../shared/model/evaluation'
import { fail, ok, type Result } from '../shared/model/result'
import type { MatcherWish } from '../shared/training/kernel/fit-matcher'
import { evaluationTable } from './bench/evaluation-table'
import { readLibraryAt } from './datasets/read-library'
import { loadCoreForNode } from './load-core'

const USAGE = `npm run evaluate -- PATH [--holdout tester|take] [--matcher template|kernel|auto] [--json]

PATH is a library file (.zip) or a folder of CSV takes named gesture/tester_number.csv.
--holdout tester  (default) no tester is in both training and test: how it does for strangers
--holdout take    one take in five is held out: how it does for people it knows
--matcher auto    (default) templates, kernel features or both, whatever held-out testers speak for
--json            the whole evaluation as JSON instead of a table`

const MATCHERS = ['template', 'kernel', 'auto'] as const

interface Request {
  path: string
  holdout: Holdout
  matcher: MatcherWish
  json: boolean
}

function readRequest(args: string[]): Result<Request> {
  const options = {
    holdout: { type: 'string', default: 'tester' },
    matcher: { type: 'string', default: 'auto' },
    json: { type: 'boolean', default: false },
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
    return ok({ path, holdout: values.holdout, matcher, json: values.json })
  } catch (error) {
    return fail('usage', `${error instanceof Error ? error.message : error}\n\n${USAGE}`)
  }
}

async function run(args: string[]): Promise<Result<string>> {
  const request = readRequest(args)
  if (!request.ok) return request
  const { path, holdout, matcher, json } = request.value
  const library = readLibraryAt(path)
  if (!library.ok) return library
  const core = await loadCoreForNode()
  const evaluation = await evaluateLibrary(
    core,
    library.value,
    holdout,
    ({ done, total, what }) => {
      process.stderr.write(`${done}/${total} ${what}\n`)
    },
    { matcher },
  )
  if (!evaluation.ok) return evaluation
  return ok(json ? JSON.stringify(evaluation.value, null, 2) : evaluationTable(evaluation.value))
}

const result = await run(process.argv.slice(2))
if (result.ok) {
  process.stdout.write(`${result.value}\n`)
} else {
  process.stderr.write(`${result.message}\n`)
  process.exitCode = result.message === USAGE && process.argv.includes('--help') ? 0 : 1
}
