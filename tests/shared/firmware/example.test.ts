import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { repositoryPath } from '../../../src/build/paths'
import { describeWithTools } from '../../support/tools'

/** Prints "<x> <y> <z> <valid> <six values of 1 2 3 4 5 -32768 turned>" for all maps, then rates. */
const HARNESS = `#include <stdio.h>
#include "axes.h"
#include "rate.h"
int main(void) {
  for (int n = 0; n < 343; n++) {
    axes_map map = {(int8_t)(n / 49 - 3), (int8_t)(n / 7 % 7 - 3), (int8_t)(n % 7 - 3)};
    int16_t sample[MVW_AXES] = {1, 2, 3, 4, 5, -32768};
    printf("%d %d %d %d", map[0], map[1], map[2], axes_valid(map));
    if (axes_valid(map)) {
      axes_apply(map, sample);
      for (int i = 0; i < MVW_AXES; i++) printf(" %d", sample[i]);
    }
    printf("\\n");
  }
  printf("rate %u %u %u %u\\n", (unsigned)rate_millihertz(200, 2000000), (unsigned)rate_millihertz(208, 2000000),
         (unsigned)rate_millihertz(200, 0), (unsigned)rate_millihertz(4000000000u, 4000000000u));
  return 0;
}
`

interface Row {
  map: number[]
  valid: boolean
  turned: number[]
}

describeWithTools('pieces of the example main loops', ['gcc'], () => {
  const folder = mkdtempSync(join(tmpdir(), 'movewright-example-'))
  let rows: Row[]
  let rates: string

  beforeAll(() => {
    writeFileSync(join(folder, 'harness.c'), HARNESS)
    const example = repositoryPath('src/shared/firmware/templates/example')
    const program = join(folder, 'pieces')
    execFileSync('gcc', [
      ...['-std=c99', '-Wall', '-Wextra', '-Wpedantic', '-Werror', '-fsanitize=undefined'],
      ...[`-I${example}`, `-I${repositoryPath('src/core')}`, join(folder, 'harness.c')],
      ...[join(example, 'axes.c'), join(example, 'rate.c'), '-o', program],
    ])
    const lines = execFileSync(program, { encoding: 'utf8' }).trim().split('\n')
    rates = lines.pop() ?? ''
    rows = lines.map((line) => {
      const [x = 0, y = 0, z = 0, valid, ...turned] = line.split(' ').map(Number)
      return { map: [x, y, z], valid: valid === 1, turned }
    })
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  test('24 of all maps are rotations, as a cube has: each axis once and determinant one', () => {
    const matrix = ({ map }: Row) =>
      map.map((from) => [1, 2, 3].map((axis) => (Math.abs(from) === axis ? Math.sign(from) : 0)))
    const determinant = (row: Row) => {
      const [a, b, c] = matrix(row) as [number[], number[], number[]]
      const minor = (i: number, j: number) => b[i]! * c[j]! - b[j]! * c[i]!
      return a[0]! * minor(1, 2) - a[1]! * minor(0, 2) + a[2]! * minor(0, 1)
    }
    expect(rows.filter(({ valid }) => valid)).toHaveLength(24)
    for (const row of rows) expect(row.valid, String(row.map)).toBe(determinant(row) === 1)
  })

  test('a map turns both sensors alike, and the lowest count to the highest', () => {
    const sample = [1, 2, 3, 4, 5, -32768]
    for (const { map, turned } of rows.filter(({ valid }) => valid)) {
      const expected = [0, 3].flatMap((base) =>
        map.map((from) => Math.sign(from) * (sample[base + Math.abs(from) - 1] ?? 0)),
      )
      expect(turned).toEqual(expected.map((value) => Math.min(32767, value)))
    }
  })

  test('a rate comes out in mHz, and nought when it cannot be', () => {
    expect(rates).toBe('rate 100000 104000 0 1000000000')
  })
})
