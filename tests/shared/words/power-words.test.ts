import { expect, test } from 'vitest'
import { cellPreset } from '../../../src/shared/power/cells'
import { defaultLed, defaultPower } from '../../../src/shared/power/defaults'
import { drainOf, type LightUse, runtime } from '../../../src/shared/power/runtime'
import { shortNumber } from '../../../src/shared/words/en/numbers'
import {
  currentTable,
  headroomSentences,
  powerTable,
} from '../../../src/shared/words/en/power-words'

const USE: LightUse = { restDuty: [0.1, 0, 0], answerSeconds: [1, 1, 1] }

test('the table has least, typical and most of everything, and ends with the time', () => {
  const rows = powerTable(defaultPower(), defaultLed(), USE)
  const total = drainOf(defaultPower(), defaultLed(), USE).total
  const row = (label: string) => rows.find((one) => one.label === label)!
  expect(row('Together, on average').values).toEqual(
    [total.min, total.typ, total.max].map(shortNumber),
  )
  expect(row('Runtime').values[1]).toBe(shortNumber(runtime(defaultPower(), total).hours.typ))
  expect(rows.every(({ values }) => values.length === 3)).toBe(true)
})

test('currents are shown for each colour from fresh to empty cells', () => {
  const rows = currentTable(defaultPower(), defaultLed())
  expect(rows).toHaveLength(9)
  expect(rows.find(({ label }) => label === 'blue, empty cells')?.values).toEqual(['0', '0', '0'])
})

test('a colour without headroom and a cell that is asked too much are said with numbers', () => {
  const three = headroomSentences(defaultPower(), defaultLed())
  expect(three).toEqual([
    'Green needs up to 3.52 V, empty cells leave 2.70 V; typically it is dark below 1.07 V a cell.',
    'Blue needs up to 3.82 V, empty cells leave 2.70 V; typically it is dark below 1.07 V a cell.',
  ])
  const boosted = { ...defaultPower(), supply: 'boost' as const, boostV: 5 }
  expect(headroomSentences(boosted, defaultLed())).toEqual([])
  const coin = { ...boosted, ...cellPreset('cr2032').electrical, series: 1 }
  expect(headroomSentences(coin, defaultLed())).toEqual([
    expect.stringContaining('the cell is made for 3 mA'),
  ])
})
