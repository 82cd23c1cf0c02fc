import { LIGHT_SAFETY } from '../words/en/light-safety'
import { bareFlashes, type FlashCount, generalFlashes, MOST_FLASHES, redFlashes } from './flashes'
import { LOW_RISK_HZ, modulationLimits, NO_EFFECT_HZ } from './flicker'
import { answersInOrder, type LightOwner, lightOf, lightTable } from './library-light'
import type { LightPlayer } from './player'
import { RUN_STEP_MS, type Run, runAlone, runInTurn, runLengthMs } from './run'
import { FIRST_GESTURE, type LightTable, REJECT } from './table'

export const FLASH_RULES = ['general-flash', 'red-flash', 'bare-led'] as const
export type FlashRule = (typeof FLASH_RULES)[number]

/** One figure against its limit. */
export interface SafetyFinding {
  rule: FlashRule | 'pwm'
  /** Answer it belongs to; null for the drive of the LED. */
  key: string | null
  value: number
  limit: number
  passes: boolean
  /** When it happens; null when it happens always. */
  where: string
  source: string
  /** What was found, with number and limit. */
  sentence: string
}

const COUNTERS: Record<FlashRule, (run: Run, stepMs: number) => FlashCount> = {
  'general-flash': generalFlashes,
  'red-flash': redFlashes,
  'bare-led': bareFlashes,
}

/** Counts of every rule. */
export const FLASH_COUNTERS = Object.values(COUNTERS)

/** Longest look at two answers in turn: several changes at the least time between them. */
const IN_TURN_MS = 4_000

/**
 * Flashes of one answer: alone with all that follows it, and in turn with each other answer as fast
 * as they are taken. The worst count of each rule.
 */
export function checkAnswer(
  player: LightPlayer,
  library: LightOwner,
  key: string,
): SafetyFinding[] {
  const table = lightTable(library)
  const named = answersInOrder(library)
  const number = named.findIndex((entry) => entry.key === key)
  const own = named[number]
  if (own === undefined) return []
  const alone = runAlone(player, table, number, runLengthMs(table, number))
  const worst = FLASH_RULES.map((rule) => ({
    rule,
    count: COUNTERS[rule](alone, RUN_STEP_MS),
    where: LIGHT_SAFETY.fromTheStart,
  }))
  for (const other of partners(table, number)) {
    const run = runInTurn(player, table, [number, other], inTurnMs(library))
    for (const entry of worst) {
      const count = COUNTERS[entry.rule](run, RUN_STEP_MS)
      if (count.flashes <= entry.count.flashes) continue
      entry.count = count
      entry.where = LIGHT_SAFETY.inTurn(named[other]?.name ?? '')
    }
  }
  return worst.map(({ rule, count, where }) => flashFinding(rule, own, count.flashes, where))
}

/** Answers that may come in turn with this one: all that people can bring about. */
function partners(table: LightTable, number: number): number[] {
  const asked = table.effects.flatMap(({ effect }, i) =>
    (i === REJECT || i >= FIRST_GESTURE) && effect.kind !== 'off' ? [i] : [],
  )
  return asked.includes(number) ? asked.filter((other) => other !== number) : []
}

function inTurnMs(library: LightOwner): number {
  return Math.min(12_000, IN_TURN_MS + 4 * lightOf(library).minChangeMs)
}

function flashFinding(
  rule: FlashRule,
  { key, name }: { key: string; name: string },
  flashes: number,
  where: string,
): SafetyFinding {
  return {
    rule,
    key,
    value: flashes,
    limit: MOST_FLASHES,
    passes: flashes <= MOST_FLASHES,
    where,
    source: LIGHT_SAFETY.sources[rule],
    sentence: LIGHT_SAFETY.counted({ answer: name, rule, count: flashes, most: MOST_FLASHES }),
  }
}

/** PWM of the LED against the recommended practice for flicker. */
export function checkPwm(library: LightOwner): SafetyFinding {
  const { pwmHz } = lightOf(library).led
  const { lowRisk, noEffect } = modulationLimits(pwmHz)
  const limit = Math.min(100, lowRisk)
  return {
    rule: 'pwm',
    key: null,
    value: 100,
    limit,
    passes: lowRisk >= 100,
    where: LIGHT_SAFETY.everyBrightness,
    source: LIGHT_SAFETY.flickerSource,
    sentence:
      lowRisk >= 100
        ? LIGHT_SAFETY.flickerPasses(pwmHz, noEffect >= 100 ? null : NO_EFFECT_HZ)
        : LIGHT_SAFETY.flickerFails({ pwmHz, lowRiskPercent: limit, lowRiskHz: LOW_RISK_HZ }),
  }
}

/** All findings over a limit, a sentence each: what an export needs an acknowledgement for. */
export function lightFindings(player: LightPlayer, library: LightOwner): string[] {
  const findings = [
    ...answersInOrder(library).flatMap(({ key }) => checkAnswer(player, library, key)),
    checkPwm(library),
  ]
  return findings.filter(({ passes }) => !passes).map(({ sentence }) => sentence)
}
