import type { RecogniserModel } from '../model/recogniser-model'
import { channelCount } from '../model/recogniser-model'
import { BUDGET_WARNINGS } from '../words/en/budget-warnings'
import { type Budget, budgetOf } from './budget'
import type { Part } from './parts'

/** Something a part has too little of. */
export interface BudgetWarning {
  what: 'flash' | 'ram' | 'time' | 'duty'
  /** What is wrong, with both figures. */
  message: string
}

/** A change that would help, and what the budget would then be. */
export interface Saving {
  /** 'templates' and so on, for a link to the setting. */
  what: 'templates' | 'length' | 'axes' | 'rate' | 'longest'
  message: string
  flashBytes: number
  ramBytes: number
  decisionMs: number
}

/** Left to the firmware around the recogniser: shares of the part that it may not exceed. */
const MOST_FLASH = 0.8
const MOST_RAM = 0.75
/** A person notices a delay of a tenth of a second (Miller, AFIPS 1968; Nielsen 1993). */
const MOST_DECISION_MS = 100
const MOST_DUTY = 0.5

export function budgetWarnings(budget: Budget, part: Part): BudgetWarning[] {
  const found: BudgetWarning[] = []
  const { flash, ram, decisionMs, busyDuty } = budget
  if (flash.value > part.flashBytes * MOST_FLASH) {
    const message = BUDGET_WARNINGS.flash(flash.value, part.flashBytes)
    found.push({ what: 'flash', message })
  }
  if (ram.value > part.ramBytes * MOST_RAM) {
    const message = BUDGET_WARNINGS.ram(ram.value, part.ramBytes)
    found.push({ what: 'ram', message })
  }
  if (decisionMs.value > MOST_DECISION_MS) {
    const message = BUDGET_WARNINGS.time(decisionMs.value, MOST_DECISION_MS)
    found.push({ what: 'time', message })
  }
  if (busyDuty.value > MOST_DUTY) {
    const message = BUDGET_WARNINGS.duty(busyDuty.value)
    found.push({ what: 'duty', message })
  }
  return found
}

/** Changes that make the model smaller or quicker, those that help most first. */
export function savings(model: RecogniserModel, part: Part, warned: BudgetWarning[]): Saving[] {
  const now = budgetOf(model, part)
  const all = smaller(model).map(({ what, message, model: changed }): Saving => {
    const then = budgetOf(changed, part)
    return {
      what,
      message,
      flashBytes: then.flash.value,
      ramBytes: then.ram.value,
      decisionMs: then.decisionMs.value,
    }
  })
  const gain = (saving: Saving) =>
    warned.reduce((sum, { what }) => sum + gainIn(what, saving, now), 0)
  return all.filter((saving) => gain(saving) > 0.02).sort((a, b) => gain(b) - gain(a))
}

function gainIn(what: BudgetWarning['what'], saving: Saving, now: Budget): number {
  if (what === 'flash') return 1 - saving.flashBytes / now.flash.value
  if (what === 'ram') return 1 - saving.ramBytes / now.ram.value
  return 1 - saving.decisionMs / now.decisionMs.value
}

interface Smaller {
  what: Saving['what']
  message: string
  model: RecogniserModel
}

/** The shapes of smaller models; their values do not matter here. */
function smaller(model: RecogniserModel): Smaller[] {
  const { normaliser, segmenter, band, gestures } = model
  const most = Math.max(...gestures.map(({ templates }) => templates.length))
  const shorter = Math.max(4, Math.round((normaliser.length * 3) / 4))
  const found: Smaller[] = []
  const add = (what: Saving['what'], message: string, change: Partial<RecogniserModel>) =>
    found.push({ what, message, model: { ...model, ...change } })
  if (most > 1) {
    const fewer = gestures.map((gesture) => ({
      ...gesture,
      templates: gesture.templates.slice(0, most - 1),
    }))
    add('templates', BUDGET_WARNINGS.templates(most - 1, most), { gestures: fewer })
  }
  const nextBand = Math.round((band * 3) / 4)
  const short = { ...normaliser, length: shorter }
  const cut = (values: number) => (template: Int8Array) => template.subarray(0, values)
  const withLength = gestures.map((gesture) => ({
    ...gesture,
    templates: gesture.templates.map(cut(shorter * channelCount(normaliser))),
  }))
  add('length', BUDGET_WARNINGS.points(shorter, normaliser.length), {
    normaliser: short,
    band: Math.min(nextBand, shorter - 1),
    gestures: withLength,
  })
  if (channelCount(normaliser) > 3) {
    const three = { ...normaliser, channelMask: normaliser.channelMask & 0b111000 || 0b000111 }
    const withAxes = gestures.map((gesture) => ({
      ...gesture,
      templates: gesture.templates.map(cut(normaliser.length * channelCount(three))),
    }))
    add('axes', BUDGET_WARNINGS.threeAxes, { normaliser: three, gestures: withAxes })
  }
  add('rate', BUDGET_WARNINGS.halfRate, halfRate(model))
  const longest = { ...segmenter, maxLength: Math.ceil((segmenter.maxLength * 3) / 4) }
  add('longest', BUDGET_WARNINGS.shorterMovements, { segmenter: longest })
  return found
}

function halfRate({ segmenter, board }: RecogniserModel): Partial<RecogniserModel> {
  const half = (samples: number) => Math.ceil(samples / 2)
  const { maxLength, offHold, accelLag } = segmenter
  const lengths = { maxLength: half(maxLength), offHold: half(offHold), accelLag: half(accelLag) }
  return {
    segmenter: { ...segmenter, ...lengths },
    board: { ...board, rateMillihertz: Math.round(board.rateMillihertz / 2) },
  }
}
