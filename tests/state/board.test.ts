import 'fake-indexeddb/auto'
import { strFromU8, unzipSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import type { StepId } from '../../src/shared/board/check/steps'
import type { BoardLog } from '../../src/shared/board/log/board-log'
import { previewLog } from '../../src/shared/board/log/read-log'
import { conditionRecording } from '../../src/shared/conditioning/condition-recording'
import { AXES } from '../../src/shared/model/sample'
import { defaultTarget } from '../../src/shared/target/default-target'
import type { BoardState } from '../../src/state/board'
import { openApp } from './app-bench'

/** Lines as a board prints them, without times, from words. */
function printed(counts: ArrayLike<number>): string {
  const rows = Array.from({ length: counts.length / AXES }, (_, row) =>
    Array.from({ length: AXES }, (_, axis) => counts[AXES * row + axis]).join(','),
  )
  return `ax_raw,ay_raw,az_raw,gx_raw,gy_raw,gz_raw\n${rows.join('\n')}\n`
}

async function readAs(board: BoardState, step: StepId, text: string) {
  const preview = previewLog(text, defaultTarget())
  if (!preview.ok) throw new Error(preview.message)
  return board.bench.readFile(step, new Blob([text]), 'log.csv', preview.value.mapping)
}

/** A still board in a pose, in counts of the default target, with offsets. */
function pose(gravity: [number, number, number]): number[] {
  const zero = [40, -60, 80, 12, -8, 4]
  return Array.from({ length: 120 }, (_, i) => [
    ...gravity.map((g, axis) => Math.round(g / 0.000244) + zero[axis]! + (i % 3) - 1),
    ...zero.slice(3).map((count) => count + (i % 3) - 1),
  ]).flat()
}

describe('a board beside the app', () => {
  test('calibrates the target, and the exported firmware takes the counts as its zero', async () => {
    const app = await openApp()
    await app.library.addDemo()
    const board = await app.openBoard()
    const faces = [
      ['still', [0, 0, 1]],
      ['face+x', [1, 0, 0]],
      ['face-x', [-1, 0, 0]],
      ['face+y', [0, 1, 0]],
      ['face-y', [0, -1, 0]],
      ['face+z', [0, 0, 1]],
      ['face-z', [0, 0, -1]],
    ] as const
    for (const [step, gravity] of faces) {
      expect((await readAs(board, step, printed(pose([...gravity])))).ok).toBe(true)
    }
    const found = board.beside.calibrate(false)
    if (!found.ok) throw new Error(found.message)
    expect(found.value.stored.zero).toEqual([40, -60, 80, 12, -8, 4])
    await board.beside.keepCalibration(found.value)
    expect(app.library.current.value?.target.calibration?.zero).toEqual([40, -60, 80, 12, -8, 4])
    const bundle = await app.exportFirmware()
    if (!bundle.ok) throw new Error(bundle.message)
    const files = Object.entries(unzipSync(bundle.value.bytes))
    const header = files.find(([path]) => path.endsWith('model/model.h'))
    expect(strFromU8(header![1])).toMatch(/MODEL_CALIBRATED_BOARD[^}]*\{40, -60, 80, 12, -8, 4\}/)
    const main = files.find(([path]) => path.endsWith('example/main.c'))
    expect(strFromU8(main![1])).toContain('MODEL_CALIBRATED_BOARD')
    await board.beside.keepCalibration(null)
    expect(app.library.current.value?.target.calibration).toBeUndefined()
  })

  test('keeps a log as a recording from which conditioning gives the very words again', async () => {
    const app = await openApp()
    await app.library.addDemo()
    const board = await app.openBoard()
    const [x, y, z] = [0.1, 0.2, 0.97]
    const words = pose([x, y, z])
    await readAs(board, 'free', printed(words))
    // Another way of mounting than the phone's own axes.
    await board.beside.keepMounting([0, 1, 0, -1, 0, 0, 0, 0, 1])
    const before = app.library.recordings.value.length
    const kept = await board.beside.keepLog({
      gestureId: null,
      testerCode: 'T09',
      hand: 'left',
    })
    expect(kept).toMatchObject({ ok: true })
    const recording = app.library.recordings.value.find(({ source }) => source === 'board')!
    expect(app.library.recordings.value.length).toBe(before + 1)
    const samples = (await app.library.samples(recording.id))!
    const { counts } = conditionRecording(samples, app.library.current.value!.target, 1)
    const middle = AXES * 60
    for (let axis = 0; axis < AXES; axis++) {
      expect(Math.abs(counts[middle + axis]! - words[middle + axis]!)).toBeLessThanOrEqual(1)
    }
  })

  test('says what is missing instead of comparing nothing', async () => {
    const app = await openApp()
    await app.library.addDemo()
    const board = await app.openBoard()
    const [recording] = app.library.recordings.value
    expect(await board.beside.compare(recording!.id)).toMatchObject({
      ok: false,
      code: 'board/no-log',
    })
    expect(await board.beside.compareLog('event 1')).toMatchObject({
      ok: false,
      code: 'board/no-log',
    })
    board.bench.simulate('axes-mirrored')
    expect(board.bench.result.value?.findings[0]?.code).toBe('axes-mirrored')
    expect(board.bench.simulated.value).toBe(true)
    await readAs(board, 'free', printed(pose([0, 0, 1])))
    expect(board.bench.simulated.value).toBe(false)
    expect(board.bench.parts.value.map(({ step }) => step)).toEqual(['free'])
  })

  test('runs a take through board and phone alike and finds no difference', async () => {
    const app = await openApp()
    await app.library.addDemo()
    const board = await app.openBoard()
    const { target } = app.library.current.value!
    const take = app.library.recordings.value.find(({ kind }) => kind === 'take')!
    const samples = (await app.library.samples(take.id))!
    const { counts } = conditionRecording(samples, target, take.device.accelSign)
    await readAs(board, 'free', printed(counts))
    const compared = await board.beside.compare(take.id)
    if (!compared.ok) throw new Error(compared.message)
    expect(compared.value.firstDifference).toBeNull()
    const log: BoardLog | undefined = board.bench.parts.value[0]?.log
    expect(log?.gyroUnit).toBe('count')
  })
})
