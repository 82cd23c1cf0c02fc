import { describe, expect, it } from 'vitest'
import { rowCount } from '../../../src/shared/board/log/board-log'
import { LineSplitter, MAX_LINE } from '../../../src/shared/board/log/line-splitter'
import { previewLog, readLog, readLogText } from '../../../src/shared/board/log/read-log'
import { defaultTarget } from '../../../src/shared/target/default-target'

const target = defaultTarget()

async function read(text: string) {
  const preview = previewLog(text, target)
  if (!preview.ok) throw new Error(preview.message)
  const result = await readLogText(text, preview.value.mapping)
  if (!result.ok) throw new Error(result.message)
  return { ...result.value, mapping: preview.value.mapping }
}

describe('lines of a board', () => {
  it('come out whole however the text is cut, also between CR and LF', () => {
    const text = '1 2 3\r\n4 5 6\n7 8 9\r10 11 12\r\nrest'
    for (let cut = 0; cut <= text.length; cut++) {
      const splitter = new LineSplitter()
      const lines = [...splitter.push(text.slice(0, cut)), ...splitter.push(text.slice(cut))]
      expect(lines, `cut at ${cut}`).toEqual(['1 2 3', '4 5 6', '7 8 9', '10 11 12'])
      expect(splitter.flush()).toBe('rest')
    }
  })

  it('do not fill the memory when no line end comes', () => {
    const splitter = new LineSplitter()
    let longest = 0
    for (let i = 0; i < 100; i++) {
      for (const line of splitter.push('\u0000x'.repeat(200)))
        longest = Math.max(longest, line.length)
    }
    expect(longest).toBeLessThanOrEqual(MAX_LINE + 400)
  })
})

describe('a board log', () => {
  it('is read from comma, semicolon, tab and space separated text, with and without header', async () => {
    const rows = [
      [0, 10, -20, 4098, 1, 2, 3],
      [19230, 11, -21, 4099, 2, 3, 4],
      [38461, 12, -22, 4100, 3, 4, 5],
      [57692, 13, -23, 4101, 4, 5, 6],
    ]
    const header = ['t_us', 'ax_raw', 'ay_raw', 'az_raw', 'gx_raw', 'gy_raw', 'gz_raw']
    for (const gap of [',', ';', '\t', ' ', '   ']) {
      for (const withHeader of [true, false]) {
        const lines = [...(withHeader ? [header] : []), ...rows].map((row) => row.join(gap))
        const { log } = await read(`${lines.join('\n')}\n`)
        const name = `gap "${gap}", header ${withHeader}`
        expect(rowCount(log), name).toBe(4)
        expect([...log.values.slice(0, 6)], name).toEqual([10, -20, 4098, 1, 2, 3])
        expect(log.accelUnit, name).toBe('count')
        if (withHeader) expect(log.tMs?.[3], name).toBeCloseTo(57.692, 9)
      }
    }
  })

  it('keeps good rows and names the lines that are none', async () => {
    const good = '1,2,3,4,5,6'
    const { log } = await read(
      [good, good, '1,2,three,4,5,6', good, '1,2', '# note', good].join('\n'),
    )
    expect(rowCount(log)).toBe(4)
    expect(log.problemCount).toBe(2)
    expect(log.problems).toEqual([
      { line: 3, what: 'column 3 holds "three" and not a number' },
      { line: 5, what: 'it ends after 2 of at least 6 fields' },
    ])
  })

  it('unwraps a 32-bit microsecond counter and leaves other falls of time as they are', async () => {
    const at = (t: number) => `${t},1,2,3,4,5,6`
    const text = [
      't_us,ax,ay,az,gx,gy,gz',
      at(4294960000),
      at(4294967000),
      at(6704),
      at(3000),
    ].join('\n')
    const { log } = await read(text)
    for (const [i, t] of [0, 7, 14, 10.296].entries()) expect(log.tMs?.[i]).toBeCloseTo(t, 6)
  })

  describe('a time that was garbled on the way', () => {
    const first = 2_400_000_000
    const rows = (garble: (t: number, i: number) => string) =>
      [
        't_us,ax,ay,az,gx,gy,gz',
        ...Array.from(
          { length: 300 },
          (_, i) => `${garble(first + 10_000 * i, i)},1,2,16384,0,0,0`,
        ),
      ].join('\n')

    it('costs its own row and moves no other', async () => {
      const { log } = await read(rows((t, i) => (i === 150 ? `?!${t}` : String(t))))
      expect(log.problems.map(({ line }) => line)).toEqual([152])
      expect(rowCount(log)).toBe(299)
      expect(log.tMs?.at(-1)).toBeCloseTo(2990, 6)
    })

    it('is refused when a digit is lost, wherever in it', async () => {
      for (let lost = 0; lost < 10; lost++) {
        const { log } = await read(
          rows((t, i) =>
            i === 150 ? String(t).slice(0, lost) + String(t).slice(lost + 1) : `${t}`,
          ),
        )
        expect(log.problems).toEqual([
          { line: 152, what: 'its time lies far before those of the lines around it' },
        ])
        expect(log.tMs?.at(-1)).toBeCloseTo(2990, 6)
      }
    })

    it('is not seen where times begin below nought', async () => {
      const { log } = await read(rows((t) => String(t - first - 1_000_000)))
      expect(rowCount(log)).toBe(300)
    })

    it('stays a fall when the board began anew', async () => {
      const { log } = await read(rows((t, i) => String(i < 150 ? t : t - first)))
      expect(rowCount(log)).toBe(300)
      expect(log.tMs?.[150]).toBeCloseTo(1500 - first / 1000, 6)
    })
  })

  it('passes over comments before and between the rows', async () => {
    const text = '# board 7\n# 104 Hz\nax ay az gx gy gz\n1 2 3 4 5 6\n# pause\n7 8 9 10 11 12\n'
    const { log, mapping } = await read(text)
    expect(mapping.headerRows).toBe(3)
    expect(rowCount(log)).toBe(2)
    expect(log.problemCount).toBe(0)
  })

  it('keeps what was read when it is stopped or its source breaks', async () => {
    const line = '1,2,3,4,5,6\n'
    const preview = previewLog(line.repeat(3), target)
    if (!preview.ok) throw new Error(preview.message)
    const { mapping } = preview.value
    async function* endless() {
      for (;;) yield line.repeat(100)
    }
    let asked = 0
    const stopped = await readLog(endless(), mapping, { shouldStop: () => ++asked > 4 })
    expect(stopped.ok && [rowCount(stopped.value.log), stopped.value.cut]).toEqual([500, 'stopped'])
    async function* unplugged() {
      yield line.repeat(7)
      throw new Error('The device has been lost.')
    }
    const broken = await readLog(unplugged(), mapping)
    expect(broken.ok && [rowCount(broken.value.log), broken.value.cut]).toEqual([7, 'broken'])
  })

  it('says in one sentence what is wrong with a log of nothing but text', async () => {
    expect(previewLog('hello\nworld\n', target)).toMatchObject({ ok: false, code: 'csv/columns' })
    const preview = previewLog('1,2,3,4,5,6\n', target)
    if (!preview.ok) throw new Error(preview.message)
    const result = await readLogText('a,b,c,d,e,f\n', preview.value.mapping)
    expect(result).toMatchObject({ ok: false, code: 'log/no-rows' })
  })
})
