import { afterAll, beforeAll, expect, it } from 'vitest'
import type { RunningServer } from '../../src/build/static-server'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { openRig, type Rig } from './rig'

/** Light, LED and cells by what a thumb does; each step goes on where the one before ended. */
describeWithTools('light in a real browser', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig

  beforeAll(async () => {
    server = await serveBuiltApp()
    rig = await openRig()
    await rig.open(server.url)
    await rig.page.getByRole('button', { name: 'Load the lantern parade demo' }).tap()
    await rig.page.locator('.gesture-card').first().waitFor({ timeout: 60_000 })
  })
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
  })

  const see = (text: string | RegExp, timeout = 20_000) =>
    rig.page.getByText(text).first().waitFor({ timeout })
  const tap = (name: string | RegExp) => rig.page.getByRole('button', { name }).first().tap()
  const field = (label: string | RegExp) => rig.page.getByLabel(label).first()
  const lamp = () =>
    rig.look<string>(
      `document.querySelector('.lamp-light')?.style.getPropertyValue('--lamp') ?? ''`,
    )
  const LIT = `(document.querySelector('.lamp-light')?.style.getPropertyValue('--lamp').match(/\\d+/g) ?? [0]).some((value) => value > 40)`

  it('leads from the gesture to its light, where nothing flashes by default', async () => {
    await rig.page.locator('.gesture-card').first().tap()
    await rig.page.getByRole('link', { name: /Light, sound/ }).tap()
    await see(/in a second, 3 are the limit/)
    expect(await rig.page.locator('.finding-over').count()).toBe(0)
    expect(await field('Kind').inputValue()).toBe('steady')
    // Until another is asked for: what the next steps look at does not end by itself.
    await field('Rounds').fill('0')
  })

  it('warns once a visit before the screen becomes the light', async () => {
    await rig.page.getByRole('link', { name: 'See it full screen' }).tap()
    await see('Light that changes')
    expect(await rig.page.locator('.lamp-light').count()).toBe(0)
    await tap('Show the light')
    await rig.until(LIT)
    await see(/dashes [\d.]+ mm apart/)
    await tap('Close')
    await rig.page.getByRole('link', { name: 'See it full screen' }).tap()
    await rig.until(LIT)
    await tap('Close')
  })

  it('refuses a round of 0 ms at the field and keeps what was', async () => {
    await field(/Stays for/).fill('0')
    await see('Enter a whole number from 20 to 65535.')
    await field(/Stays for/).fill('2100')
  })

  it('counts the flashes of what was made too fast, shows it slower, and mends it by a tap', async () => {
    await field('Kind').selectOption('breathe')
    await field(/One breath takes/).fill('120')
    await rig.page.locator('.finding-over').first().waitFor()
    await rig.page.getByRole('link', { name: 'See it full screen' }).tap()
    await see(/Shown at 0\.\d+ of its speed/)
    expect(await lamp()).toMatch(/^rgb\(|^$/)
    await tap('Close')
    await rig.page.locator('.finding-over').first().waitFor()
    await tap('Slow it down')
    await rig.until(`document.querySelectorAll('.finding').length >= 3`)
    await rig.until(`document.querySelectorAll('.finding-over').length === 0`, 20_000)
    expect(Number(await field(/One breath takes/).inputValue())).toBeGreaterThan(120)
  })

  it('asks for a written word where a limit is passed on purpose', async () => {
    await field(/One breath takes/).fill('120')
    await rig.page.locator('.finding-over').first().waitFor()
    await rig.look(`void (location.hash = '#/light')`)
    await see('Over a limit')
    await tap('Acknowledge in writing')
    await see(/Write why this light may be shown/)
    await field(/Who sees it/).fill('Only on the bench, behind smoked glass.')
    await tap('Acknowledge in writing')
    await see(/It stands in the exported files/)
  })

  it('says what PWM does, and puts a frequency of 490 Hz right by a tap', async () => {
    await rig.look(`void (location.hash = '#/light/led')`)
    await see(/4000 Hz: 100 % modulation is no observable effect/)
    await field('PWM, Hz').fill('490')
    await see(/490 Hz: 100 % modulation, 39.2 % are low risk/)
    await tap('Set 3003 Hz')
    await see(/3003 Hz: 100 % modulation is no observable effect/)
    await field('PWM, Hz').fill('0')
    await see(/PWM of 0 Hz is no PWM/)
    await field('PWM, Hz').fill('4000')
    await field('typical').fill('9')
    await see(/must rise from least to most/)
  })

  it('shows how long the cells last, and refuses cells of 0 mAh', async () => {
    await rig.look(`void (location.hash = '#/light/cells')`)
    await see('Runtime')
    await see(/Blue needs up to 3.82 V, empty cells leave 2.70 V/)
    await rig.page.getByRole('button', { name: 'Take it, with resistors' }).last().tap()
    await see('Every colour has headroom until the cells are empty.')
    await field('least').fill('0')
    await see(/Cells of 0 mAh feed nothing/)
  })
})
