import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { repositoryPath } from '../../../src/build/paths'
import { describeWithTools } from '../../support/tools'

/**
 * Prints "<ms> <red> <green> <blue> <taken>" every 10 ms for 20 s. A gesture comes every `period`
 * ms, white and dark in turn; the clock starts just before it wraps around.
 */
const HARNESS = `#include <stdio.h>
#include <stdlib.h>
#include "effects.h"
const light_colour light_colours[] = {{255, 255, 255}, {0, 0, 0}};
int main(int count, char **words) {
  uint32_t period = (uint32_t)atoi(words[count - 1]);
  uint32_t begin = 0xffffffffu - 5000u;
  uint8_t gesture = 0;
  light lamp;
  light_init(&lamp);
  for (uint32_t ms = 0; ms < 20000u; ms += 10u) {
    int taken = 0;
    if (period != 0 ? ms % period == 0 : ms == 1000u) {
      taken = light_start(&lamp, gesture, begin + ms);
      if (taken && period != 0) gesture = (uint8_t)(1u - gesture);
    }
    light_colour now = light_at(&lamp, begin + ms);
    printf("%u %u %u %u %d\\n", (unsigned)ms, (unsigned)now.red, (unsigned)now.green,
           (unsigned)now.blue, taken);
  }
  return 0;
}
`

interface Row {
  ms: number
  red: number
  taken: boolean
}

/** Times at which brightness, having changed by a tenth or more, turns to the other direction. */
function turns(rows: Row[]): number[] {
  const found: number[] = []
  let direction = 1
  let extreme = 0
  for (const { ms, red } of rows) {
    if (direction * (red - extreme) > 0) extreme = red
    if (Math.abs(red - extreme) < 25.5) continue
    found.push(ms)
    direction = -direction
    extreme = red
  }
  return found
}

describeWithTools('light of the exported firmware', ['gcc'], () => {
  const folder = mkdtempSync(join(tmpdir(), 'movewright-effects-'))
  const program = join(folder, 'light')

  beforeAll(() => {
    writeFileSync(join(folder, 'harness.c'), HARNESS)
    const effects = repositoryPath('src/shared/firmware/templates/effects')
    execFileSync('gcc', [
      ...['-std=c99', '-Wall', '-Wextra', '-Wpedantic', '-Werror', '-fsanitize=undefined'],
      ...[`-I${effects}`, join(folder, 'harness.c'), join(effects, 'effects.c'), '-o', program],
    ])
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  function light(periodMs: number): Row[] {
    const lines = execFileSync(program, [String(periodMs)], { encoding: 'utf8' })
      .trim()
      .split('\n')
    return lines.map((line) => {
      const [ms = 0, red = 0, , , taken = 0] = line.split(' ').map(Number)
      return { ms, red, taken: taken === 1 }
    })
  }

  test('a gesture fades in over 600 ms, holds 1,500 ms, fades out over 1,200 ms', () => {
    const rows = light(0)
    const at = (ms: number) => rows.find((row) => row.ms === ms)?.red
    expect([at(990), at(1000), at(1300), at(1600), at(3090)]).toEqual([0, 0, 128, 255, 255])
    expect([at(3700), at(4300), at(19000)]).toEqual([128, 0, 0])
  })

  for (const periodMs of [10, 100, 250, 600, 610, 1000]) {
    test(`gestures every ${periodMs} ms never make more than one flash in a second`, () => {
      const rows = light(periodMs)
      expect(rows.some(({ red }) => red > 200)).toBe(true)
      // A flash is a pair of opposite changes of a tenth or more (WCAG 2.2): two turns.
      const times = turns(rows)
      expect(times.length).toBeGreaterThan(5)
      for (const [index, time] of times.entries()) {
        const second = times[index + 2]
        if (second !== undefined) expect(second - time).toBeGreaterThanOrEqual(1000)
      }
      const starts = rows.filter(({ taken }) => taken).map(({ ms }) => ms)
      for (let n = 1; n < starts.length; n++) {
        expect((starts[n] ?? 0) - (starts[n - 1] ?? 0)).toBeGreaterThanOrEqual(600)
      }
    })
  }
})
