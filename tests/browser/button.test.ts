import { afterAll, beforeAll, expect, it } from 'vitest'
import type { RunningServer } from '../../src/build/static-server'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { performance, stillness } from './hand-player'
import { openRig, type Rig } from './rig'

/** A library whose movements are cut by a button, on the screens that listen. */
describeWithTools('a prop with a button in a real browser', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig

  beforeAll(async () => {
    server = await serveBuiltApp()
    rig = await openRig()
    await rig.open(server.url)
    await button('Load the lantern parade demo').tap()
    await rig.page.locator('.gesture-card').first().waitFor({ timeout: 60_000 })
    await place('Prop')
    await rig.page.getByText('A button', { exact: true }).tap()
  })
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
  })

  const button = (name: string | RegExp) => rig.page.getByRole('button', { name }).first()
  const place = (name: string) => rig.page.getByRole('link', { name, exact: true }).tap()

  /** Holds the button on the screen while the hand rings; the pointer stays where it was. */
  async function ringHeld(seed: number): Promise<void> {
    const held = rig.page.locator('.press')
    const box = await held.boundingBox()
    if (box === null) throw new Error('The button is not on the screen.')
    await rig.sensors.play(stillness(1200, seed))
    await rig.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await rig.page.mouse.down()
    await rig.sensors.play(performance('ring', seed, 150))
    await rig.page.mouse.up()
    await rig.sensors.play(stillness(400, seed))
  }

  /** Rings until a place names it; a busy computer spoils some performances. */
  async function ringUntilNamed(selector: string): Promise<void> {
    for (let attempt = 0; attempt < 8; attempt++) {
      await ringHeld(60 + attempt)
      if (await rig.page.locator(selector, { hasText: 'Ring' }).isVisible()) return
    }
    throw new Error('Ring was not recognised in eight tries.')
  }

  it('answers on Try what was moved while the button was held, and nothing without it', async () => {
    await place('Try')
    await button(/^Start$/).tap()
    await rig.page.locator('.press').waitFor({ timeout: 60_000 })
    await rig.sensors.play(performance('ring', 50))
    await rig.sensors.play(stillness(900, 50))
    await rig.page.getByText('Movements are cut by the button').waitFor()
    expect(await rig.page.locator('.answer').count()).toBe(0)
    await ringUntilNamed('.answer h2')
    await button('Stop').tap()
  })

  it('says on Proof how the button is taken to be held', async () => {
    await place('Proof')
    await button(/^Measure/).tap()
    await rig.page
      .getByText(/is taken to be held from 150/)
      .first()
      .waitFor({ timeout: 120_000 })
    await place('Try')
  })

  it('answers on the stage, with the controls clear of the button', async () => {
    await rig.page.getByRole('link', { name: /^Stage/ }).tap()
    await button(/^Begin$/).tap()
    await button(/^Begin$/).tap()
    await rig.page.locator('.press').waitFor({ timeout: 60_000 })
    await rig.until(`document.querySelector('.stage-line').textContent === ''`, 60_000)
    await ringUntilNamed('.stage-name')
    const foot = await rig.page.locator('.stage-foot').boundingBox()
    const press = await rig.page.locator('.press').boundingBox()
    expect(foot!.y + foot!.height).toBeLessThanOrEqual(press!.y)
  })
})
