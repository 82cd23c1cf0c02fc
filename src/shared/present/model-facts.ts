import { kernelByteLength } from '../format/kernel-bytes'
import type { TrainedModel } from '../model/evaluation'
import { channelCount, type RecogniserModel } from '../model/recogniser-model'
import type { Target } from '../model/target'
import { MODEL_FACTS } from '../words/en/model-facts'
import { byteText, groupDigits } from '../words/en/numbers'

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
      label: MODEL_FACTS.flash,
      value: byteText(trained.tableBytes),
      known: 'estimated',
      share: trained.tableBytes / target.modelBudgetBytes,
      note: MODEL_FACTS.ofBudget(trained.tableBytes, target.modelBudgetBytes),
    },
    {
      label: MODEL_FACTS.ram,
      value: byteText(trained.ramBytes),
      known: 'estimated',
      share: trained.ramBytes / target.ramBytes,
      note: MODEL_FACTS.ofRam(trained.ramBytes, target.ramBytes),
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
      label: MODEL_FACTS.templates,
      value: byteText(templateBytes(model)),
      known: 'counted',
      share: null,
      note: MODEL_FACTS.templatesNote({
        templates,
        points: normaliser.length,
        axes: channelCount(normaliser),
      }),
    })
  }
  if (kernel !== null) {
    facts.push({
      label: MODEL_FACTS.kernel,
      value: byteText(kernelByteLength(kernel, gestures.length)),
      known: 'counted',
      share: null,
      note: MODEL_FACTS.kernelNote(kernel.features.length, kernel.pools),
    })
  }
  return facts
}

function warpingFacts(model: RecogniserModel): ModelFact[] {
  if (templateCount(model) === 0) return []
  return [
    {
      label: MODEL_FACTS.work,
      value: groupDigits(decisionCells(model) * channelCount(model.normaliser)),
      known: 'counted',
      share: null,
      note: MODEL_FACTS.workNote(model.kernel !== null),
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
    found.push(MODEL_FACTS.flashTooSmall)
  }
  if (trained.ramBytes > target.ramBytes) {
    found.push(MODEL_FACTS.ramTooSmall)
  }
  return found
}
