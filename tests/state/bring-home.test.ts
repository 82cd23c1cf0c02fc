import { describe, expect, it } from 'vitest'
import type { App } from '../../src/state/app'
import { addOwnTake, asFile, bringHome, open, takes, underNames } from './collect-bench'

const gestures = (app: App) => app.library.current.value!.gestures
const names = (app: App) => gestures(app).map(({ name }) => name)

async function undoBring(app: App): Promise<void> {
  await app.undoable.value.find(({ text }) => text.endsWith('brought home.'))?.undo?.()
}

/** Takes of a gesture that the library has not. */
function orphans(app: App): number {
  const known = new Set(gestures(app).map(({ id }) => id))
  return takes(app).filter((one) => one.kind === 'take' && !known.has(one.gestureId)).length
}

describe('agreeing to what files bring', () => {
  it('twice at once stores everything once', async () => {
    const { app, session } = await open()
    const collect = await app.openCollect()
    await collect.bring([asFile(session)])
    const answers = await Promise.all([collect.agree(), collect.agree()])
    expect(answers.map(({ ok }) => ok)).toEqual([true, true])
    expect(takes(app)).toHaveLength(7)
  })

  it('once more after it was stored stores nothing', async () => {
    const { app, session } = await open()
    const collect = await bringHome(app, session)
    expect(await collect.agree()).toMatchObject({ ok: false, code: 'collect/nothing' })
    expect(takes(app)).toHaveLength(7)
  })

  it('is refused while another library is open, and stored once its own is again', async () => {
    const { app, session } = await open()
    const own = app.library.current.value!.id
    const collect = await app.openCollect()
    await collect.bring([asFile(session)])
    await app.library.create('Rehearsal')
    const refused = await collect.agree()
    expect(refused).toMatchObject({ ok: false, code: 'collect/other-library' })
    expect(!refused.ok && refused.message).toContain('"Night parade"')
    expect(takes(app)).toEqual([])
    expect(gestures(app)).toEqual([])
    await app.library.open(own)
    expect((await collect.agree()).ok).toBe(true)
    expect(takes(app)).toHaveLength(7)
  })

  it('is refused when the library would hold more than 64 gestures, until some are mapped', async () => {
    const { app, session } = await open()
    for (let n = 3; n <= 63; n++) await app.library.addGesture(`Sign ${n}`)
    const collect = await app.openCollect()
    await collect.bring([asFile(underNames(session, ['Pour', 'Knock']))])
    const refused = await collect.agree()
    expect(refused).toMatchObject({ ok: false, code: 'collect/too-many-gestures' })
    expect(!refused.ok && refused.message).toMatch(/at most 64 gestures.*would be 65/)
    expect(takes(app)).toEqual([])
    expect(gestures(app)).toHaveLength(63)
    collect.mapGesture('knock', gestures(app)[0]!.id)
    expect((await collect.agree()).ok).toBe(true)
    expect(gestures(app)).toHaveLength(64)
    expect((await app.exportLibrary()).ok).toBe(true)
  })
})

describe('what is changed while contents are worked out', () => {
  it('stays when files are read', async () => {
    const { app, session } = await open()
    const [raise, ring] = gestures(app)
    await addOwnTake(app, raise!.id)
    const collect = await app.openCollect()
    const own = app.library.current.value!.id
    const reading = collect.bring([asFile(session)])
    await app.library.relabel(takes(app)[0]!.id, ring!.id)
    await app.library.addGesture('Pour')
    await reading
    await app.library.open(app.library.current.value!.id)
    expect(takes(app)).toMatchObject([{ gestureId: ring!.id, contentId: expect.any(String) }])
    await app.library.create('Rehearsal')
    await app.library.open(own)
    expect(names(app)).toEqual(['Raise', 'Ring', 'Pour'])
  })

  it('stays when what they bring is stored', async () => {
    const { app, session } = await open()
    const [raise, ring] = gestures(app)
    const collect = await app.openCollect()
    await collect.bring([asFile(session)])
    await addOwnTake(app, raise!.id)
    const own = takes(app)[0]!.id
    const [agreed] = await Promise.all([
      collect.agree(),
      app.library.relabel(own, ring!.id),
      app.library.addGesture('Pour'),
    ])
    expect(agreed.ok).toBe(true)
    expect(names(app)).toEqual(['Raise', 'Ring', 'Pour'])
    expect(takes(app).find(({ id }) => id === own)).toMatchObject({ gestureId: ring!.id })
  })

  it('stays when a take is dropped', async () => {
    const { app } = await open()
    const [raise, ring] = gestures(app)
    for (const { id } of [raise!, raise!]) await addOwnTake(app, id)
    const [one, other] = takes(app)
    const collect = await app.openCollect()
    await Promise.all([
      collect.drop([one!.id]),
      app.library.relabel(other!.id, ring!.id),
      app.library.addGesture('Pour'),
    ])
    expect(names(app)).toEqual(['Raise', 'Ring', 'Pour'])
    expect(takes(app)).toMatchObject([{ id: other!.id, gestureId: ring!.id }])
  })
})

describe('undoing what was brought', () => {
  it('keeps an added gesture under which own takes were recorded since, and only that one', async () => {
    const { app, session } = await open()
    await bringHome(app, underNames(session, ['Pour', 'Knock']))
    const pour = gestures(app).find(({ name }) => name === 'Pour')!
    await addOwnTake(app, pour.id)
    await undoBring(app)
    expect(names(app)).toEqual(['Raise', 'Ring', 'Pour'])
    expect(takes(app)).toMatchObject([{ gestureId: pour.id, testerCode: 'T09' }])
    expect(orphans(app)).toBe(0)
    expect((await app.exportLibrary()).ok).toBe(true)
  })

  it('takes back labels that came with the files, and keeps those edited since', async () => {
    const { app, session } = await open()
    const collect = await bringHome(app, session)
    const [raise, ring] = gestures(app)
    const other = await open()
    await bringHome(other.app, session)
    const firstOf = (one: App) => takes(one).find(({ sampleCount }) => sampleCount === 90)!
    const before = firstOf(app)
    expect(before).toMatchObject({ gestureId: raise!.id, hand: 'right' })
    await other.app.library.relabel(firstOf(other.app).id, gestures(other.app)[1]!.id)
    await other.app.library.updateFacts(firstOf(other.app).id, { hand: 'left' })
    const exported = await other.app.exportLibrary()
    if (!exported.ok) throw new Error(exported.message)
    const file = { name: 'other desk.zip', bytes: async () => exported.value.bytes }
    await collect.bring([file])
    await collect.agree()
    expect(firstOf(app)).toMatchObject({ gestureId: ring!.id, hand: 'left' })
    await app.library.updateFacts(before.id, { hand: 'unknown', note: 'lamp was low' })
    await undoBring(app)
    expect(firstOf(app)).toMatchObject({ gestureId: raise!.id, hand: 'unknown' })
    expect(firstOf(app)).toMatchObject({ note: 'lamp was low' })
    // Edited apart now: the other desk's hand is asked for, its gesture is news again.
    await collect.bring([file])
    const { value } = collect.bringing
    const merge = value.state === 'report' ? value.report.merge : null
    expect(merge?.conflicts.map(({ field }) => field)).toEqual(['hand'])
    expect(merge?.relabelled.map(({ id }) => id)).toEqual([before.id])
  })
})
