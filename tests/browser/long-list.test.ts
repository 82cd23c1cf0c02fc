import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { libraryOfTakes } from '../../src/build/bench/speed/many-takes'
import type { RunningServer } from '../../src/build/static-server'
import { writeLibraryFile } from '../../src/shared/format/library-file'
import type { FullLibrary } from '../../src/shared/model/library'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { openRig, type Rig } from './rig'

const TAKES = 10_000

/** All takes of one gesture, and of two samples each: rows are what counts here. */
async function manyShortTakes(): Promise<FullLibrary> {
  const { library, recordings } = await libraryOfTakes(TAKES)
  const gesture = library.gestures[0]!
  return {
    library: { ...library, gestures: [gesture] },
    recordings: recordings.map(({ recording, samples }) => ({
      recording: {
        ...recording,
        ...(recording.kind === 'take' && { gestureId: gesture.id }),
        sampleCount: 2,
        durationMs: samples.tMs[1]! - samples.tMs[0]!,
        gaps: [],
      },
      samples: { tMs: samples.tMs.slice(0, 2), values: samples.values.slice(0, 12) },
    })),
  }
}

describeWithTools('a list of 10,000 takes', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig
  const folder = mkdtempSync(join(tmpdir(), 'movewright-long-list-'))

  beforeAll(async () => {
    const file = join(folder, 'library.zip')
    writeFileSync(file, writeLibraryFile(await manyShortTakes()))
    server = await serveBuiltApp()
    rig = await openRig()
    await rig.open(`${server.url}#/library`)
    const input = rig.page.locator('input[type=file][accept*=zip]').first()
    await input.waitFor({ state: 'attached' })
    await input.setInputFiles(file)
    const card = rig.page.locator('.gesture-card').first()
    await card.waitFor({ timeout: 240_000 })
    await card.click()
    await rig.page.locator('.take').first().waitFor({ timeout: 60_000 })
  }, 300_000)
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
    rmSync(folder, { recursive: true, force: true })
  })

  const places = () =>
    rig.page
      .locator('.take')
      .evaluateAll((rows) => rows.map((row) => Number(row.getAttribute('aria-posinset'))))
  const focused = () =>
    rig.look<string | null>(`document.activeElement.closest('li')?.getAttribute('aria-posinset')`)

  it('has the rows near the window in the page and says how many there are', async () => {
    const rows = await places()
    expect(rows[0]).toBe(1)
    expect(rows.length).toBeLessThan(100)
    const sizes = await rig.page.locator(`.take[aria-setsize="${TAKES}"]`).count()
    expect(sizes).toBe(rows.length)
    // As tall as all rows together, so that the bar of the scroller tells the truth.
    const height = await rig.look<number>(`document.querySelector('.takes').offsetHeight`)
    const row = await rig.look<number>(`document.querySelector('.take').offsetHeight`)
    expect(Math.abs(height - TAKES * row)).toBeLessThan(2 * row)
  })

  it('shows rows wherever it is scrolled to, down to the last', async () => {
    for (const share of [0.5, 0.25, 1]) {
      await rig.look(`{
        const box = document.querySelector('.takes').closest('.screen-scroll')
        box.scrollTop = ${share} * box.scrollHeight
      }`)
      await rig.until(`(() => {
        const middle = document.elementFromPoint(innerWidth / 2, innerHeight / 2)
        return middle?.closest('.take') != null
      })()`)
      const rows = await places()
      expect(rows.length).toBeLessThan(100)
      const at = rows[Math.floor(rows.length / 2)]!
      expect(Math.abs(at / TAKES - share)).toBeLessThan(0.02)
    }
    expect((await places()).at(-1)).toBe(TAKES)
  })

  it('is walked by the keyboard, and a row with the focus stays', async () => {
    await rig.page.locator(`.take[aria-posinset="${TAKES}"] button`).first().focus()
    await rig.page.keyboard.press('Home')
    await rig.until(`document.activeElement.closest('li')?.getAttribute('aria-posinset') === '1'`)
    for (let i = 0; i < 12; i++) await rig.page.keyboard.press('ArrowDown')
    await rig.until(`document.activeElement.closest('li')?.getAttribute('aria-posinset') === '13'`)
    await rig.look(`{
      const box = document.querySelector('.takes').closest('.screen-scroll')
      box.scrollTop = box.scrollHeight / 2
    }`)
    await rig.until(`document.querySelector('.take[aria-posinset="5000"]') !== null`)
    expect(await focused()).toBe('13')
    // A tab goes on from where the focus was, not from the top of the page.
    await rig.page.keyboard.press('ArrowDown')
    await rig.until(`document.activeElement.closest('li')?.getAttribute('aria-posinset') === '14'`)
  })

  it('keeps a row that was opened, and its place, while others come and go', async () => {
    await rig.page.keyboard.press('Enter')
    const open = '.take[aria-posinset="14"] [aria-expanded="true"]'
    await rig.page.locator(open).waitFor()
    await rig.look(`{
      const box = document.querySelector('.takes').closest('.screen-scroll')
      box.scrollTop = box.scrollHeight
    }`)
    await rig.until(`document.querySelector('.take[aria-posinset="${TAKES}"]') !== null`)
    expect(await rig.page.locator(open).count()).toBe(1)
  })
})
