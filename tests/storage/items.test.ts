import 'fake-indexeddb/auto'
import { expect, it } from 'vitest'
import { openStore } from '../../src/storage/open-store'
import { exampleLibrary } from './examples'

const item = (id: string, keptAt: string, libraryId = 'parade') => ({
  id,
  libraryId,
  keptAt,
  value: { accuracy: 0.96 },
})

it('items are listed by library, oldest first, and replaced under the same id', async () => {
  const store = await openStore('items')
  await store.putItem('models', item('second', '2026-03-02T20:00:00Z'))
  await store.putItem('models', item('first', '2026-03-01T20:00:00Z'))
  await store.putItem('models', item('elsewhere', '2026-03-01T20:00:00Z', 'workshop'))
  await store.putItem('models', { ...item('first', '2026-03-01T20:00:00Z'), value: 'new' })
  const found = await store.listItems('models', 'parade')
  expect(found.map(({ id, value }) => [id, value])).toEqual([
    ['first', 'new'],
    ['second', { accuracy: 0.96 }],
  ])
  expect(await store.listItems('results', 'parade')).toEqual([])
  store.close()
})

it('items are removed by id, and ids that are not there are passed over', async () => {
  const store = await openStore('items-removed')
  await store.putItem('results', item('kept', '2026-03-01T20:00:00Z'))
  await store.putItem('results', item('gone', '2026-03-01T20:00:00Z'))
  expect(await store.removeItems('results', ['gone', 'never there'])).toMatchObject({ ok: true })
  expect((await store.listItems('results', 'parade')).map(({ id }) => id)).toEqual(['kept'])
  store.close()
})

it('items go for good with the library they stand beside, and with no other', async () => {
  const store = await openStore('items-purged')
  await store.putLibrary(exampleLibrary())
  await store.putItem('sessions', item('with it', '2026-03-01T20:00:00Z'))
  await store.putItem('sessions', item('elsewhere', '2026-03-01T20:00:00Z', 'workshop'))
  await store.deleteLibrary('parade')
  expect(await store.listItems('sessions', 'parade')).toHaveLength(1)
  await store.purgeDeleted('9999-01-01T00:00:00Z')
  expect(await store.listItems('sessions', 'parade')).toEqual([])
  expect(await store.listItems('sessions', 'workshop')).toHaveLength(1)
  store.close()
})
