import { describe, expect, test } from 'vitest'
import { compareLogs } from '../../src/build/target/compare-logs'
import { joinOutputs, readOutput } from '../../src/build/target/self-test-output'

const HEAD = 'movewright 1\nmodel 00\n'

describe('readOutput', () => {
  test('parts the log from prompts, comments and line ends of a terminal', () => {
    const { log, costs } = readOutput(`${HEAD}>vector a\r\n>>init 0\n>>>># said\nend 4\ndone\n`)
    expect(log).toBe(`${HEAD}vector a\ninit 0\nend 4\ndone\n`)
    expect(costs).toBeNull()
  })

  test('sums up what was measured', () => {
    const measured = '# decision 1 7\n# decision 1 9\n# idle 2 30\n# idle 1 15\n# stack 90 640\n'
    expect(readOutput(measured).costs).toEqual({
      decisions: [7, 9],
      idle: { samples: 3, ticks: 45 },
      moving: { samples: 0, ticks: 0 },
      stackBytes: 90,
    })
  })
})

test('runs that took a part of the vectors each are joined as if they were one', () => {
  const part = (name: string, ticks: number) =>
    readOutput(`${HEAD}vector ${name}\nend 1\n# decision 1 ${ticks}\ndone\n`)
  const { log, costs } = joinOutputs([part('a', 3), part('b', 5)])
  expect(log).toBe(`${HEAD}vector a\nend 1\nvector b\nend 1\ndone\n`)
  expect(costs?.decisions).toEqual([3, 5])
})

describe('compareLogs', () => {
  const log = `${HEAD}vector a\ninit 0\nend 1\nvector b\ninit 0\nend 2\ndone\n`

  test('counts all when nothing differs', () => {
    expect(compareLogs(log, log)).toEqual({ agreed: 2, of: 2, difference: null })
  })

  test('counts the vectors that agree and names the first line that does not', () => {
    expect(compareLogs(log.replace('end 1', 'end 3'), log)).toEqual({
      agreed: 1,
      of: 2,
      difference: 'line 5: expected "end 1", found "end 3"',
    })
  })

  test('a log cut short differs, and so does one of another model', () => {
    expect(compareLogs(log.slice(0, -5), log).difference).toContain('expected "done"')
    expect(compareLogs(log.replace('model 00', 'model 01'), log)).toMatchObject({
      agreed: 2,
      difference: 'line 2: expected "model 00", found "model 01"',
    })
  })
})
