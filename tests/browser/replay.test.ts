import { afterAll, beforeAll, expect, it } from 'vitest'
import type { RunningServer } from '../../src/build/static-server'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { openRig, type Rig } from './rig'

/** WebGL drawn by the processor: a test computer may have no graphics. */
const DRAWN = ['--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader']

/** Id of the first take that is stored. */
const FIRST_TAKE = `new Promise((resolve, reject) => {
  const opening = indexedDB.open('movewright')
  opening.onerror = reject
  opening.onsuccess = () => {
    const all = opening.result.transaction('recordings').objectStore('recordings').getAll()
    all.onerror = reject
    all.onsuccess = () => resolve(all.result.find((one) => one.kind === 'take').id)
  }
})`

/** Opens a take of the demo in the replay. */
async function openReplay(rig: Rig, url: string): Promise<void> {
  await rig.page.emulateMedia({ reducedMotion: 'reduce' })
  await rig.open(url)
  await rig.page.getByRole('button', { name: 'Load the lantern parade demo' }).tap()
  await rig.page.locator('.moves-grid').waitFor({ timeout: 60_000 })
  await rig.page.goto(`${url}#/replay/${await rig.page.evaluate(FIRST_TAKE)}`)
  await rig.page.locator('.lanes svg').waitFor({ timeout: 60_000 })
}

const sampleOf = (text: string | null) => Number(/sample (\d+)/.exec(text ?? '')?.[1])

describeWithTools('a replay in the built app', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig

  beforeAll(async () => {
    server = await serveBuiltApp()
    rig = await openRig({ arguments: DRAWN })
    await openReplay(rig, server.url)
  }, 120_000)
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
  })

  const sample = async () => sampleOf(await rig.page.locator('.scrub').textContent())

  it('waits for the hand where motion is reduced, and goes by keys', async () => {
    await rig.page.getByRole('button', { name: 'Play' }).waitFor()
    expect(await sample()).toBe(0)
    await rig.page.keyboard.press('ArrowRight')
    await rig.page.keyboard.press('Shift+ArrowRight')
    await expect.poll(sample).toBe(11)
    await rig.page.keyboard.press('Home')
    await expect.poll(sample).toBe(0)
  })

  it('plays to the end at an eighth, and stops where it is told to', async () => {
    for (let i = 0; i < 3; i++) await rig.page.keyboard.press('ArrowDown')
    await rig.page.getByLabel('Speed ⅛').isChecked()
    await rig.page.keyboard.press(' ')
    await expect.poll(sample).toBeGreaterThan(3)
    await rig.page.keyboard.press(' ')
    const stopped = await sample()
    await rig.page.waitForTimeout(400)
    expect(await sample()).toBe(stopped)
  })

  it('grows distances to all eight gestures, ending at the one of the decision', async () => {
    const plot = rig.page.locator('.growth svg[role=img]')
    await plot.waitFor({ timeout: 20_000 })
    const spoken = (await plot.getAttribute('aria-label')) ?? ''
    expect(spoken.match(/, /g)).toHaveLength(8)
    const nearest = /first: \S+ ([\d\u202f]+)/.exec(spoken)?.[1]
    const reason = await rig.page
      .getByText(/^distance/)
      .first()
      .textContent()
    expect(reason).toContain(`distance ${nearest} `)
  })

  it('shows another take behind, and the path to any template', async () => {
    const beside = rig.page.getByLabel('Beside it, dashed')
    expect(await beside.locator('option').count()).toBeGreaterThan(5)
    await beside.selectOption({ index: 2 })
    await expect.poll(() => rig.page.locator('.lane-ghost').count()).toBe(7)
    // Two paths may have as many links; they do not lie alike.
    const links = () =>
      rig.page.locator('.pairing-link').evaluateAll((all) => all.map((one) => one.outerHTML).join())
    const own = await links()
    expect(own).not.toBe('')
    // The take is any of the demo's: another gesture than the one that it was nearest to.
    const nearest = rig.page.getByLabel('Nearest template of')
    const chosen = await nearest.evaluate((select) => (select as HTMLSelectElement).selectedIndex)
    await nearest.selectOption({ index: chosen === 4 ? 5 : 4 })
    await expect.poll(links).not.toBe(own)
  })

  it('draws the prop turned as the play head says, and lets it go when the graphics are taken', async () => {
    const picture = async () =>
      (await rig.page.locator('.prop-view canvas').screenshot()).toString('base64')
    await rig.page.keyboard.press('Home')
    await rig.page.waitForTimeout(300)
    const before = await picture()
    for (let i = 0; i < 9; i++) await rig.page.keyboard.press('Shift+ArrowRight')
    await rig.page.waitForTimeout(300)
    expect(await picture()).not.toBe(before)
    await rig.page.evaluate(`{
      const canvas = document.querySelector('.prop-view canvas')
      const gl = canvas.getContext('webgl2') ?? canvas.getContext('webgl')
      gl.getExtension('WEBGL_lose_context').loseContext()
    }`)
    await rig.page.getByText('took the 3‑D picture away').waitFor()
    expect(await rig.page.locator('.lanes svg').isVisible()).toBe(true)
    await rig.page.getByRole('button', { name: 'Try again' }).tap()
    await rig.page.locator('.prop-view canvas').waitFor()
  })
})

describeWithTools('a replay without WebGL', ['chromium'], () => {
  it('says so in a sentence and shows the traces', async () => {
    const server = await serveBuiltApp()
    const rig = await openRig({ arguments: ['--disable-3d-apis'] })
    try {
      await openReplay(rig, server.url)
      await rig.page.getByText('draws no 3‑D here').waitFor()
      expect(await rig.page.locator('.lanes svg').isVisible()).toBe(true)
    } finally {
      await rig.close()
      rig.profile.remove()
      await server.close()
    }
  }, 120_000)
})
