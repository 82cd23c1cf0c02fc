import { kernelByteLength } from '../format/kernel-bytes'
import type { TrainedModel } from '../model/evaluation'
import { channelCount, type RecogniserModel } from '../model/recogniser-model'
import type { Target } from '../model/target'
import { byteText, groupDigits, percent } from '../words/en/numbers'

/** One figure of a model and how it is known. */
export interface ModelFact {
  label: string
  value: string
  /** 'counted' is exact on this phone; 'estimated' needs a build for the board to be known. */
  known: 'counted' | 'estimated'
  /** Share of what the target has, 0 to 1 and above; null where nothing limits it. */
  share: number | null
  note: string
}

/** Bytes of all templates: templates × points × channels, one byte each. */
export function templateBytes(model: RecogniserModel): number {
  return templateCount(model) * model.normaliser.length * channelCount(model.normaliser)
}

export function templateCount(model: RecogniserModel): number {
  return model.gestures.reduce((sum, gesture) => sum + gesture.templates.length, 0)
}

/** What the model takes of the target, each figure marked counted or estimated. */
export function modelFacts(trained: TrainedModel, target: Target): ModelFact[] {
  const { model } = trained
  return [
    ...matcherFacts(model),
    {
      label: 'Flash for tables',
      value: byteText(trained.tableBytes),
      known: 'estimated',
      share: trained.tableBytes / target.modelBudgetBytes,
      note: `${percent(trained.tableBytes / target.modelBudgetBytes)} of the ${byteText(target.modelBudgetBytes)} for the model`,
    },
    {
      label: 'RAM',
      value: byteText(trained.ramBytes),
      known: 'estimated',
      share: trained.ramBytes / target.ramBytes,
      note: `${percent(trained.ramBytes / target.ramBytes)} of ${byteText(target.ramBytes)}, without the stack`,
    },
    ...warpingFacts(model),
  ]
}

/** What segments are compared with, and the bytes of each kind; exact, as in the model bytes. */
function matcherFacts(model: RecogniserModel): ModelFact[] {
  const { kernel, normaliser, gestures } = model
  const facts: ModelFact[] = []
  const templates = templateCount(model)
  if (templates > 0) {
    facts.push({
      label: 'Templates',
      value: byteText(templateBytes(model)),
      known: 'counted',
      share: null,
      note: `${templates} templates × ${normaliser.length} points × ${channelCount(normaliser)} axes`,
    })
  }
  if (kernel !== null) {
    facts.push({
      label: 'Kernel features',
      value: byteText(kernelByteLength(kernel, gestures.length)),
      known: 'counted',
      share: null,
      note: `${groupDigits(kernel.features.length)} features, ${kernel.pools} counts each, an int8 weight a gesture and count`,
    })
  }
  return facts
}

function warpingFacts(model: RecogniserModel): ModelFact[] {
  if (templateCount(model) === 0) return []
  return [
    {
      label: 'Work of a decision, at most',
      value: groupDigits(decisionCells(model) * channelCount(model.normaliser)),
      known: 'counted',
      share: null,
      note: `multiplications: templates × cells in the band × axes${model.kernel === null ? '' : '; kernel features come on top, see Budget'}`,
    },
  ]
}

/** Cells of the warping matrices that one decision may visit, over all templates. */
function decisionCells(model: RecogniserModel): number {
  const n = model.normaliser.length
  const outside = Math.max(0, n - 1 - model.band)
  return templateCount(model) * (n * n - outside * (outside + 1))
}

/** What does not fit the target, one sentence each; empty when all fits. */
export function misfits(trained: TrainedModel, target: Target): string[] {
  const found: string[] = []
  if (trained.tableBytes > target.modelBudgetBytes) {
    found.push(
      'The tables are larger than the flash for the model: fewer templates or fewer points.',
    )
  }
  if (trained.ramBytes > target.ramBytes) {
    found.push(
      'The recogniser needs more RAM than the target has: shorter movements or fewer points.',
    )
  }
  return found
}
