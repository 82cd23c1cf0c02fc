import { answersInOrder, lightOf, lightTable } from '../light/library-light'
import { effectFields, keyFields, packKeys } from '../light/table'
import type { Library } from '../model/library'
import type { Step } from '../model/light'
import { commentText } from './c-text'

/**
 * `effect_table.h`: how the timer that dims the light is to be set up, and what the light must give.
 * @param vector of `lightVector`
 */
export function effectHeader(library: Library, vector: number): string {
  const { pwmBits, pwmHz } = lightOf(library).led
  return `/* The timer that dims the light. */
#ifndef EFFECT_TABLE_H
#define EFFECT_TABLE_H

/* It counts 0..LIGHT_TOP (${pwmBits} bits), LIGHT_PWM_HZ times a second. */
#define LIGHT_TOP ${2 ** pwmBits - 1}u
#define LIGHT_PWM_HZ ${Math.round(pwmHz)}u

/* What light_vector() gives on every board that computes as the phone does. */
#define LIGHT_VECTOR 0x${vector.toString(16).padStart(8, '0')}u

#endif
`
}

/** `effect_table.c`: effects, keyframes, tunes and vibrations as constant tables. */
export function effectTable(library: Library, acknowledged: string): string {
  const named = answersInOrder(library)
  const table = lightTable(library)
  const { keys, first } = packKeys(table)
  const effects = table.effects.map(({ effect, next }, index) => {
    const [kind, rule, follow, low, high, red, green, blue, ...rest] = effectFields(
      effect,
      next,
      first[index] ?? 0,
    )
    const values = `${kind}, ${rule}, ${follow}, ${low}, ${high}, {${red}, ${green}, ${blue}}`
    return `    {${values}, ${rest.join(', ')}, 0}, /* ${commentText(named[index]?.name ?? '')} */`
  })
  const frames = keys.map((key) => {
    const [at, level, red, green, blue, ease] = keyFields(key)
    return `    {${at}, ${level}, {${red}, ${green}, ${blue}}, ${ease}, 0},`
  })
  const tunes = named.map(({ answer }) => answer.sound)
  const shakes = named.map(({ answer }) => answer.vibration)
  return `/*
 * How the prop answers, in the order of enum mvw_light: at rest, to a rejected movement, at rest
 * with low cells, then each gesture in the order of enum model_gesture. Fields: mvw_light.h.
 *
${acknowledged
  .split('\n')
  .map((line) => ` * ${commentText(line)}`.trimEnd())
  .join('\n')}
 */
#include "effects.h"

static const mvw_light_key keys[] MVW_FLASH = {
${frames.length === 0 ? '    {0, 0, {0, 0, 0}, 0, 0}, /* none */' : frames.join('\n')}
};

static const mvw_light_effect effects[] MVW_FLASH = {
${effects.join('\n')}
};

const mvw_light_table light_table = {
    .effects = effects,
    .keys = keys,
    .effect_count = ${table.effects.length}u,
    .full_ma = {${table.fullMa.join(', ')}},
    .limit_ma = ${table.limitMa}u,
    .min_change_ms = ${table.minChangeMs}u,
    .seed = ${table.seed}u,
};

${stepTables('tune', tunes, 'Hz')}
${stepTables('shake', shakes, 'strength, 0 to 255')}`
}

/** Steps of all answers in a row, and where each answer's begin. */
function stepTables(name: string, lists: readonly (readonly Step[])[], unit: string): string {
  let first = 0
  const rows = lists.map((steps) => {
    const row = `    {${first}u, ${steps.length}u},`
    first += steps.length
    return row
  })
  const steps = lists.flat().map(({ value, ms }) => `    {${value}u, ${ms}u},`)
  return `/* ${unit}; ms */
const mvw_step ${name}_steps[] MVW_FLASH = {
${steps.length === 0 ? '    {0, 1}, /* none */' : steps.join('\n')}
};

/* First step and number of steps of each answer. */
const effect_steps ${name}s[] = {
${rows.join('\n')}
};
`
}
