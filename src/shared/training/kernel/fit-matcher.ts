import type { Core } from '../../core/core'
import type { FeatureShape } from '../../format/kernel-bytes'
import { kernelByteLength } from '../../format/kernel-bytes'
import type { MatcherKind, ModelKernel } from '../../model/recogniser-model'
import { createRandom } from '../../statistics/random'
import { TRAINING_NOTES } from '../../words/en/training-notes'
import { MOST_TEMPLATES } from '../budget'
import type { Example } from '../examples'
import { chooseTemplates } from '../template-choice'
import { Design } from './design'
import { countFeatures, findBiases } from './design-matrix'
import { planFeatures } from './feature-plan'
import { groupsOf } from './groups'
import { marginLoss, shareNearest } from './margins'
import { type Quantised, quantiseKernel } from './quantise'
import { fitRidge, type RidgeFit, STRENGTHS, weightsOf } from './ridge'
import { coverTemplates, heldOutLogDistances } from './template-distances'

/** What the trainer may choose from. */
export type MatcherWish = 'template' | 'kernel' | 'auto'

export interface MatcherRequest {
  /** Examples whose `gesture` is an index 0 to classCount - 1; each class has at least one. */
  examples: readonly Example[]
  classCount: number
  /** Points and channels of a query. The core must hold a model with this normaliser. */
  length: number
  channels: number
  /** Distances between the examples, n × n; not asked for where no template is wanted. */
  readonly table: Float64Array
  /** Bytes for templates and kernel table together. */
  budgetBytes: number
  templatesPerGesture: number
  seed: number
  wish: MatcherWish
}

/** One way to compare, judged by testers (or takes) left out of it. */
export interface MatcherFit {
  kind: MatcherKind
  /** Examples that are templates, for each class; empty lists for 'kernel'. */
  chosen: number[][]
  kernel: ModelKernel | null
  /** Templates a class beside kernel features. */
  perClass: number
  /** Of the ridge regression. */
  strength: number
  /** Held-out distance of every example to every class, in the units of the core's events. */
  heldOut: Float64Array
  /** Distances times this change like ln(template distance). Null: they are template distances. */
  perLog: number | null
  /** marginLoss and share named rightly, of the held-out distances. */
  loss: number
  share: number
  /** For people: what was chosen. */
  says: string
}

/** Where both are used, templates take these shares of the most, and that share of the budget. */
const TEMPLATE_SHARES = [0.3, 0.65, 1]
const MOST_SHARE = 0.7
/** Weights of ln(template distance) beside the scores; small ones carry over to new people. */
const LOG_FACTORS = [0.3, 0.6, 1]
/** More features gain little and cost time. */
const MOST_FEATURES = 1500
const LEAST_FEATURES = 24
/** Fewer examples than this a class, on average, and a regression has nothing to go by. */
const LEAST_EXAMPLES = 3

/**
 * Finds templates, kernel features or both within the budget; with 'auto' whatever separates best
 * where testers are left out. Null when not even the smallest fits the budget.
 */
export function fitMatcher(core: Core, request: MatcherRequest): MatcherFit | null {
  const { wish, examples, classCount } = request
  const few = classCount < 2 || examples.length < LEAST_EXAMPLES * classCount
  const tried: (Draft | null)[] = []
  if (wish !== 'kernel' || few) tried.push(fitTemplates(request))
  if (wish !== 'template' && !few) {
    const numbers = wish === 'auto' ? templateCounts(request) : []
    const features = growFeatures(core, request, [0, ...numbers])
    const alone = fitKernel(core, request, { features, pools: 2, perClass: 0 })
    const strengths = alone === null ? STRENGTHS : [alone.strength]
    tried.push(alone)
    for (const perClass of numbers) {
      tried.push(fitKernel(core, request, { features, pools: 2, perClass, strengths }))
    }
    const { perClass } = bestOf(tried.filter((fit) => fit?.kind !== 'template')) ?? { perClass: 0 }
    tried.push(fitKernel(core, request, { features, pools: 3, perClass, strengths }))
  }
  const best = bestOf(tried)
  return best?.finish() ?? null
}

/** What there is to choose by, before the work that only the chosen one needs. */
interface Draft extends Pick<MatcherFit, 'kind' | 'perClass' | 'strength' | 'loss'> {
  finish(): MatcherFit
}

function bestOf(tried: readonly (Draft | null)[]): Draft | null {
  const possible = tried.filter((fit) => fit !== null)
  return possible.reduce<Draft | null>(
    (best, fit) => (best === null || fit.loss < best.loss ? fit : best),
    null,
  )
}

/** Templates a class that leave room for features. */
function templateCounts({ budgetBytes, classCount, length, channels }: MatcherRequest): number[] {
  const most = Math.floor((MOST_SHARE * budgetBytes) / (classCount * length * channels))
  const counts = TEMPLATE_SHARES.map((share) => Math.max(1, Math.round(share * most)))
  return most < 1 ? [] : [...new Set(counts)]
}

interface Features {
  shapes: FeatureShape[]
  design: Design
}

/**
 * As many features as the roomiest choice may use; the others take the first of them.
 * @param perClass numbers of templates that leave room for features
 */
function growFeatures(core: Core, request: MatcherRequest, perClass: readonly number[]): Features {
  const { examples, length, channels, seed } = request
  const random = createRandom(seed)
  const count = roomFor(request.budgetBytes, request.classCount, 2)
  const plan = planFeatures(count, length, channels, random.fork())
  const queries = examples.map((example) => example.query)
  const shapes = findBiases(core, queries, plan, random.nextUint32())
  const asked = perClass.flatMap((templates) => {
    return [2, 3].map((pools) => roomBeside(request, templates, pools))
  })
  const table = countFeatures(core, queries, shapes)
  return { shapes, design: new Design(table, groupsOf(examples).flat(), asked, core) }
}

/** Features that have room beside so many templates of every class, about. */
function roomBeside(request: MatcherRequest, perClass: number, pools: number): number {
  const { budgetBytes, classCount, length, channels } = request
  return roomFor(budgetBytes - perClass * classCount * length * channels, classCount, pools)
}

function roomFor(bytes: number, classCount: number, pools: number): number {
  const fixed = kernelByteLength({ pools: 2, logWeight: 0, bases: [], features: [] }, classCount)
  const room = Math.floor((bytes - fixed) / (6 + pools * classCount))
  return Math.max(0, Math.min(MOST_FEATURES, room))
}

/**
 * Judged with templates that cover their classes, which is quick to choose again for every group;
 * the templates themselves are chosen with more care.
 */
function fitTemplates(request: MatcherRequest): Draft | null {
  const { examples, classCount, table, templatesPerGesture } = request
  const total = mostTemplates(request)
  if (total < classCount) return null
  const perClass = Math.min(templatesPerGesture, Math.floor(total / classCount))
  const cover = (rows: readonly number[]) =>
    coverTemplates(table, examples, classCount, perClass, rows)
  const groups = groupsOf(examples)
  const logs = heldOutLogDistances(table, examples.length, classCount, groups, cover)
  const judged = { classes: examples.map((e) => e.gesture), classCount, values: logs }
  const loss = marginLoss(judged)
  return {
    kind: 'template',
    perClass,
    strength: 0,
    loss,
    finish: () => ({
      kind: 'template',
      chosen: chooseAllTemplates(request),
      perClass,
      strength: 0,
      kernel: null,
      heldOut: logs.map((value) => Math.exp(value) - 1),
      perLog: null,
      loss,
      share: shareNearest(judged),
      says: TRAINING_NOTES.upToTemplates(total),
    }),
  }
}

function mostTemplates({ budgetBytes, length, channels }: MatcherRequest): number {
  return Math.min(MOST_TEMPLATES, Math.floor(budgetBytes / (length * channels)))
}

/** The templates of a model without kernel features. */
function chooseAllTemplates(request: MatcherRequest): number[][] {
  const { examples, classCount, table, templatesPerGesture } = request
  const limits = { perGesture: templatesPerGesture, total: mostTemplates(request) }
  return chooseTemplates(table, examples, classCount, limits)
}

interface KernelChoice {
  features: Features
  pools: 2 | 3
  /** Templates a class. */
  perClass: number
  strengths?: readonly number[]
}

function fitKernel(core: Core, request: MatcherRequest, choice: KernelChoice): Draft | null {
  const { examples, classCount, budgetBytes } = request
  const { features, pools, perClass, strengths = STRENGTHS } = choice
  const cover = (rows: readonly number[]) =>
    coverTemplates(request.table, examples, classCount, perClass, rows)
  const chosen =
    perClass === 0 ? Array.from({ length: classCount }, () => []) : cover([...examples.keys()])
  const used = chosen.flat().length * request.length * request.channels
  const count = Math.min(features.shapes.length, roomFor(budgetBytes - used, classCount, pools))
  if (count < LEAST_FEATURES) return null
  const classes = examples.map((example) => example.gesture)
  const groups = groupsOf(examples)
  const gram = features.design.gram(count, pools)
  const fit = fitRidge(gram, classes, classCount, groups, strengths, core)
  const logs =
    perClass === 0
      ? null
      : heldOutLogDistances(request.table, examples.length, classCount, groups, cover)
  const combined = combine(fit, logs, classes, classCount)
  const kind = perClass === 0 ? 'kernel' : 'both'
  const draft = { kind, perClass, strength: fit.strength, loss: combined.loss } as const
  const finish = (): MatcherFit => {
    const { kernel, unit, constant, changed } = roundKernel(core, { ...choice, count }, fit, {
      factor: combined.factor,
      logs,
    })
    return {
      ...draft,
      chosen,
      kernel,
      heldOut: combined.values.map((value) => Math.max(0, (value + constant) * unit)),
      perLog: 1 / (unit * (combined.factor || 1)),
      share: combined.share,
      says: TRAINING_NOTES.kernelFeatures({
        count,
        pools,
        templates: chosen.flat().length,
        logWeight: combined.factor,
        ridge: fit.strength,
        changed,
      }),
    }
  }
  return { ...draft, finish }
}

function roundKernel(
  core: Core,
  { features: { shapes, design }, count, pools }: KernelChoice & { count: number },
  fit: RidgeFit,
  { factor, logs }: { factor: number; logs: Float64Array | null },
): Quantised {
  const counts = design.counts(count, pools)
  const exact = weightsOf(fit, design, counts, design.columnsOf(count, pools), core)
  const used = shapes.slice(0, count)
  return quantiseKernel(used, pools, exact, fit.fitted, counts, factor, logs, core)
}

interface Combined {
  factor: number
  values: Float64Array
  loss: number
  share: number
}

/** Minus the held-out scores plus a multiple of the logarithms: the multiple with the least loss. */
function combine(
  { heldOut }: RidgeFit,
  logs: Float64Array | null,
  classes: readonly number[],
  classCount: number,
): Combined {
  const factors = logs === null ? [0] : LOG_FACTORS
  const all = factors.map((factor): Combined => {
    const values = heldOut.map((score, at) => factor * (logs?.[at] ?? 0) - score)
    const judged = { classes, classCount, values }
    return { factor, values, loss: marginLoss(judged), share: shareNearest(judged) }
  })
  return all.reduce((best, each) => (each.loss < best.loss ? each : best))
}
