import { describe, expect, test, vi } from 'vitest'
import type { App } from '../../src/state/app'
import { freshName, openApp } from './app-bench'

async function withDemo(): Promise<App> {
  const app = await openApp()
  await app.library.addDemo()
  return app
}

const undoLast = (app: App) => app.undoable.value[0]?.undo?.()
const gestureNames = (app: App) => app.library.current.value?.gestures.map(({ name }) => name)

describe('libraries', () => {
  test('the library opened last is open again at the next start', async () => {
    const name = freshName()
    const app = await openApp(name)
    await app.library.create('First')
    const second = await app.library.create('Second')
    await app.library.create('Third')
    if (!second.ok) throw new Error(second.message)
    await app.library.open(second.value.id)
    const again = await openApp(name)
    expect(again.library.current.value?.name).toBe('Second')
  })

  test('names that differ in capitals or spaces only are the same name', async () => {
    const app = await openApp()
    await app.library.create('Bench lantern')
    const refused = await app.library.create('  bench   LANTERN ')
    expect(refused).toMatchObject({ ok: false, code: 'name/taken' })
    expect(app.library.libraries.value).toHaveLength(1)
  })

  test('a deleted library comes back with its recordings, and is open', async () => {
    const app = await withDemo()
    const id = app.library.current.value?.id ?? ''
    const takes = app.library.recordings.value.length
    await app.library.removeLibrary(id)
    expect(app.library.current.value).toBeNull()
    await undoLast(app)
    expect(app.library.current.value?.id).toBe(id)
    expect(app.library.recordings.value).toHaveLength(takes)
  })

  test('an act is undone once only, also when undo is tapped twice', async () => {
    const app = await withDemo()
    await app.library.removeLibrary(app.library.current.value?.id ?? '')
    const undo = app.undoable.value[0]?.undo
    await Promise.all([undo?.(), undo?.()])
    expect(app.library.libraries.value).toHaveLength(1)
    expect(app.undoable.value).toEqual([])
  })

  test('what can be undone stays so after its line was closed', async () => {
    const app = await withDemo()
    await app.library.removeLibrary(app.library.current.value?.id ?? '')
    const [shown] = app.notices.value
    app.dismiss(shown?.id ?? -1)
    expect(app.notices.value).toEqual([])
    expect(app.undoable.value).toHaveLength(1)
  })
})

describe('two tabs', () => {
  test('what one tab stores the other shows, and its own open library stays', async () => {
    const name = freshName()
    const one = await openApp(name)
    const created = await one.library.create('Shared')
    if (!created.ok) throw new Error(created.message)
    const other = await openApp(name)
    await other.library.addGesture('Raise')
    await vi.waitFor(() => expect(gestureNames(one)).toEqual(['Raise']), { timeout: 15_000 })
    await other.library.create('Second')
    await vi.waitFor(() => expect(one.library.libraries.value).toHaveLength(2), { timeout: 15_000 })
    expect(one.library.current.value?.id).toBe(created.value.id)
  })
})

describe('gestures and takes', () => {
  test('a deleted gesture comes back in its place with its takes', async () => {
    const app = await withDemo()
    const names = gestureNames(app)
    const takes = app.library.recordings.value.length
    const second = app.library.current.value?.gestures[1]?.id ?? ''
    await app.library.removeGesture(second)
    expect(gestureNames(app)).toEqual([names?.[0], names?.[2]])
    expect(
      app.library.recordings.value.some((one) => 'gestureId' in one && one.gestureId === second),
    ).toBe(false)
    await undoLast(app)
    expect(gestureNames(app)).toEqual(names)
    expect(app.library.recordings.value).toHaveLength(takes)
  })

  test('a relabelled take keeps its samples, and undo gives the old gesture back', async () => {
    const app = await withDemo()
    const take = app.library.recordings.value.find((one) => one.kind === 'take')
    const other = app.library.current.value?.gestures.find(
      ({ id }) => take?.kind === 'take' && id !== take.gestureId,
    )
    if (take?.kind !== 'take' || other === undefined) throw new Error('the demo has no takes')
    const samples = await app.library.samples(take.id)
    await app.library.relabel(take.id, other.id)
    expect(app.library.recordings.value.find(({ id }) => id === take.id)).toMatchObject({
      gestureId: other.id,
    })
    expect(await app.library.samples(take.id)).toEqual(samples)
    await undoLast(app)
    expect(app.library.recordings.value.find(({ id }) => id === take.id)).toMatchObject({
      gestureId: take.gestureId,
    })
  })

  test('a library has room for 64 gestures and says so at the next', async () => {
    const app = await openApp()
    await app.library.create('Full')
    for (let count = 1; count <= 64; count++) await app.library.addGesture(`G${count}`)
    expect(await app.library.addGesture('One more')).toMatchObject({
      ok: false,
      code: 'gesture/full',
    })
    expect(app.library.current.value?.gestures).toHaveLength(64)
  })
})

describe('the demo', () => {
  test('added again is a second library with takes of its own', async () => {
    const app = await withDemo()
    const first = app.library.current.value
    const ids = new Set(app.library.recordings.value.map(({ id }) => id))
    await app.library.addDemo()
    expect(app.library.libraries.value).toHaveLength(2)
    expect(app.library.current.value?.name).toBe(`${first?.name} 2`)
    expect(app.library.recordings.value).toHaveLength(ids.size)
    expect(app.library.recordings.value.some(({ id }) => ids.has(id))).toBe(false)
  })
})

describe('files', () => {
  test('a library file brought in again is a second library of the same takes', async () => {
    const app = await withDemo()
    const first = app.library.current.value
    const takes = app.library.recordings.value
    const file = await app.exportLibrary()
    if (!file.ok) throw new Error(file.message)
    const added = await app.importLibrary(file.value.bytes)
    if (!added.ok) throw new Error(added.message)
    expect(added.value.id).not.toBe(first?.id)
    expect(added.value.name).toBe(`${first?.name} 2`)
    expect(gestureNames(app)).toEqual(first?.gestures.map(({ name }) => name))
    const ids = new Set(takes.map(({ id }) => id))
    expect(app.library.recordings.value).toHaveLength(takes.length)
    expect(app.library.recordings.value.some(({ id }) => ids.has(id))).toBe(false)
  })

  test('a damaged file adds nothing and says what is wrong', async () => {
    const app = await withDemo()
    const file = await app.exportLibrary()
    if (!file.ok) throw new Error(file.message)
    const half = file.value.bytes.slice(0, file.value.bytes.length / 2)
    const added = await app.importLibrary(half)
    expect(added).toMatchObject({ ok: false, code: 'zip/not-a-zip' })
    expect(app.library.libraries.value).toHaveLength(1)
  })

  test('logs become takes of the gesture that was chosen, with their rate and gaps', async () => {
    const app = await withDemo()
    const gestureId = app.library.current.value?.gestures[0]?.id ?? ''
    const tMs = Float64Array.from({ length: 50 }, (_, row) => row * 10 + (row < 25 ? 0 : 300))
    const log = {
      fileName: 'bench.csv',
      samples: { tMs, values: new Float32Array(300) },
      hasGyro: true,
    }
    await app.library.addLogs([log], { gestureId, testerCode: 'T09', hand: 'left' })
    const added = app.library.recordings.value.find(({ testerCode }) => testerCode === 'T09')
    expect(added).toMatchObject({
      kind: 'take',
      source: 'imported',
      note: 'bench.csv',
      sampleCount: 50,
      durationMs: 790,
      gaps: [{ startMs: 240, endMs: 550 }],
      device: { rateHz: 100 },
    })
  })
})
