import { describe, expect, it } from 'vitest'
import type { App } from '../../src/state/app'
import { createNotices } from '../../src/state/notices'
import { addOwnTake, bringHome, open, takes } from './collect-bench'

const gestures = (app: App) => app.library.current.value!.gestures
const undo = (app: App, said: RegExp) =>
  app.undoable.value.find(({ text }) => said.test(text))?.undo?.()

/** Each act that is undone within a library: what is said of it, and how it is seen to be there. */
const ACTS: [what: string, said: RegExp, act: (app: App) => Promise<unknown>][] = [
  ['a dropped take', /dropped/, async (app) => (await app.openCollect()).drop([takes(app)[0]!.id])],
  [
    'a deleted take',
    /^Recording deleted/,
    (app) => app.library.removeRecordings([takes(app)[0]!.id]),
  ],
  [
    'a deleted gesture',
    /"Raise" deleted/,
    (app) => app.library.removeGesture(gestures(app)[0]!.id),
  ],
]

describe('an undo whose library was deleted since', () => {
  it.each(ACTS)('of %s says so, and is there once the library is back', async (_, said, act) => {
    const { app } = await open()
    await addOwnTake(app, gestures(app)[0]!.id)
    const before = { takes: takes(app).length, gestures: gestures(app).length }
    const { id } = app.library.current.value!
    await act(app)
    expect(takes(app)).toHaveLength(0)
    await app.library.removeLibrary(id)
    await undo(app, said)
    expect(app.notices.value.at(-1)?.text).toMatch(/undo that first/)
    expect(app.undoable.value.map(({ text }) => text)).toEqual([
      expect.stringMatching(/^Library/),
      expect.stringMatching(said),
    ])
    await undo(app, /^Library/)
    await undo(app, said)
    expect({ takes: takes(app).length, gestures: gestures(app).length }).toEqual(before)
    expect(app.undoable.value).toEqual([])
  })

  it('of what was brought home is there too', async () => {
    const { app, session } = await open()
    await bringHome(app, session)
    await app.library.removeLibrary(app.library.current.value!.id)
    await undo(app, /brought home/)
    await undo(app, /^Library/)
    expect(takes(app).length).toBeGreaterThan(0)
    await undo(app, /brought home/)
    expect(takes(app)).toEqual([])
  })
})

describe('what can be undone', () => {
  it('is undone once, however often it is asked for', async () => {
    const notices = createNotices()
    let count = 0
    notices.say('done', async () => {
      count += 1
      return true
    })
    const { undo } = notices.undoable.value[0]!
    await Promise.all([undo?.(), undo?.()])
    await undo?.()
    expect(count).toBe(1)
  })

  it('stays in its place when undoing fails', async () => {
    const notices = createNotices()
    notices.say('first', async () => {
      throw new Error('the database is closed')
    })
    notices.say('second', async () => true)
    const first = () => notices.undoable.value.find(({ text }) => text === 'first')?.undo?.()
    await expect(first()).rejects.toThrow('closed')
    expect(notices.undoable.value.map(({ text }) => text)).toEqual(['second', 'first'])
    await expect(first()).rejects.toThrow('closed')
  })
})
