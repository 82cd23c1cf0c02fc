import { signal } from '@preact/signals'
import { describe, expect, test } from 'vitest'
import { fail, ok, type Result } from '../../src/shared/model/result'
import { createJobSlot } from '../../src/state/jobs'
import { StorageError } from '../../src/storage/failure'

/** A slot whose work ends when the test says so. */
function slot() {
  const owner = signal<string | null>('library')
  const basis = signal('takes 1')
  const open: {
    end: (result: Result<string>) => void
    throws: (error: Error) => void
    signal: AbortSignal
  }[] = []
  const jobs = createJobSlot<string>({
    owner: () => owner.value,
    basis: () => basis.value,
    work: (_variant, abort) =>
      new Promise((resolve, reject) => {
        abort.addEventListener('abort', () => resolve(fail('worker/aborted', 'Stopped.')))
        open.push({ end: resolve, throws: reject, signal: abort })
      }),
  })
  return { owner, basis, open, ...jobs }
}

/** Lets what has been started run up to its next wait. */
const settle = () => new Promise((resolve) => setTimeout(resolve, 0))

describe('a job', () => {
  test('two runs on the same basis are one', async () => {
    const { run, open } = slot()
    const both = [run(), run()]
    await settle()
    expect(open).toHaveLength(1)
    open[0]?.end(ok('model'))
    expect(await Promise.all(both)).toEqual([ok('model'), ok('model')])
    expect(await run()).toEqual(ok('model'))
    expect(open).toHaveLength(1)
  })

  test('is stale once its basis has changed, and runs anew then', async () => {
    const { run, open, basis, job } = slot()
    const first = run()
    await settle()
    open[0]?.end(ok('old'))
    await first
    expect(job.value).toMatchObject({ state: 'done', value: 'old', stale: false })
    basis.value = 'takes 2'
    expect(job.value).toMatchObject({ state: 'done', value: 'old', stale: true })
    const second = run()
    await settle()
    open[1]?.end(ok('new'))
    expect(await second).toEqual(ok('new'))
    expect(job.value).toMatchObject({ state: 'done', value: 'new', stale: false })
  })

  test('whose work throws has failed with what was thrown, and can be run again', async () => {
    const { run, open, job } = slot()
    const first = run()
    await settle()
    const why = 'The browser refused to read.'
    open[0]?.throws(new StorageError('storage/failed', why))
    expect(await first).toEqual(fail('storage/failed', why))
    expect(job.value).toEqual({ state: 'failed', message: why })
    const second = run()
    await settle()
    open[1]?.throws(new TypeError('x is undefined'))
    expect(await second).toMatchObject({ ok: false, code: 'job/broke' })
    expect(job.value).toMatchObject({ message: expect.stringContaining('x is undefined') })
    const third = run()
    await settle()
    open[2]?.end(ok('model'))
    expect(await third).toEqual(ok('model'))
  })

  test('that is cancelled leaves the result from before', async () => {
    const { run, open, basis, job } = slot()
    const first = run()
    await settle()
    open[0]?.end(ok('old'))
    await first
    basis.value = 'takes 2'
    const second = run()
    await settle()
    if (job.value.state !== 'running') throw new Error('it should be running')
    job.value.cancel()
    expect(await second).toMatchObject({ ok: false, code: 'worker/aborted' })
    expect(job.value).toMatchObject({ state: 'done', value: 'old', stale: true })
  })

  test('that fails says why, and can be tried again', async () => {
    const { run, open, job } = slot()
    const first = run()
    await settle()
    open[0]?.end(fail('train/no-takes', 'There are no takes.'))
    await first
    expect(job.value).toEqual({ state: 'failed', message: 'There are no takes.' })
    void run()
    await settle()
    expect(open).toHaveLength(2)
  })

  test('on a new basis stops the one on the old', async () => {
    const { run, open, basis, job } = slot()
    void run()
    await settle()
    basis.value = 'takes 2'
    const second = run()
    await settle()
    expect(open[0]?.signal.aborted).toBe(true)
    open[1]?.end(ok('new'))
    await second
    expect(job.value).toMatchObject({ state: 'done', value: 'new', stale: false })
  })

  test('keeps the result of each library apart', async () => {
    const { run, open, owner, job } = slot()
    const first = run()
    await settle()
    open[0]?.end(ok('of the first'))
    await first
    owner.value = 'other library'
    expect(job.value).toEqual({ state: 'none' })
    owner.value = 'library'
    expect(job.value).toMatchObject({ state: 'done', value: 'of the first' })
  })
})
