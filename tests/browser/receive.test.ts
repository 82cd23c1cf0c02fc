import { appendFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { RunningServer } from '../../src/build/static-server'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { examplePlan, joinAddress } from './collect-plan'
import { openRig, type Rig } from './rig'
import { TesterUser } from './tester-user'

/** The browser plays a film of JPEGs at 30 pictures a second: each code stands for a third of one. */
const PICTURES_EACH = 10
/** What the camera sees of the tester's phone. */
const VIEW = { x: 0, y: 0, width: 640, height: 720 }

const CAMERA = ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream']

describeWithTools('a session from one phone’s screen to another’s camera', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig
  const folder = mkdtempSync(join(tmpdir(), 'movewright-film-'))
  const film = join(folder, 'codes.mjpeg')
  const plan = examplePlan()

  beforeAll(async () => {
    server = await serveBuiltApp()
  })
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server.close()
    rmSync(folder, { recursive: true, force: true })
  })

  async function begin(): Promise<TesterUser> {
    const user = new TesterUser(rig)
    await rig.open(joinAddress(server.url, plan))
    await user.tap('Take part')
    await user.tap('I agree')
    await user.tap('Right hand')
    return user
  }

  it('is shown as codes that stand for a third of a second and longer, and can be held', async () => {
    rig = await openRig()
    await rig.page.setViewportSize({ width: 640, height: 900 })
    const user = await begin()
    await user.layFlat()
    await user.tap('Start')
    await user.perform('raise', 'Raise')
    await user.reach(1)
    await user.tap('Pause')
    await user.tap('Finish')
    await user.tap(/another phone's camera/)
    // A photograph of each code, the second one lost on purpose.
    const count = rig.page.getByText(/^(Code|Extra code) \d+/)
    const total = Number(/of (\d+)/.exec((await count.textContent()) ?? '')?.[1])
    writeFileSync(film, '')
    const seen = new Set<string>()
    while (seen.size < total + 6) {
      const before = (await count.textContent()) ?? ''
      const picture = await rig.page.screenshot({ type: 'jpeg', quality: 85, clip: VIEW })
      const isWhole = before === (await count.textContent()) && !seen.has(before)
      if (!isWhole) continue
      seen.add(before)
      if (seen.size === 2) continue
      for (let n = 0; n < PICTURES_EACH; n++) appendFileSync(film, picture)
    }
    await user.tap('Pause the codes')
    const held = await count.textContent()
    await rig.page.waitForTimeout(1200)
    expect(await count.textContent()).toBe(held)
    await rig.close()
    rig.profile.remove()
  })

  it('is read whole by the other phone, though one code was missed, and goes on to be stored', async () => {
    rig = await openRig({ arguments: [...CAMERA, `--use-file-for-fake-video-capture=${film}`] })
    const user = await begin()
    await user.see('It goes on by itself')
    await rig.page.goto(`${server.url}#/collect/camera`)
    await user.tap('Start the camera')
    await user.see(/The session is here whole/, 60_000)
    await user.tap('See what it brings')
    await user.tap(/Store 1 recording/)
    await rig.until("location.hash === '#/collect'")
    await rig.page.goto(`${server.url}#/gesture/gesture-raise`)
    await user.see(/1 take/)
    await rig.close()
    rig.profile.remove()
  })

  it('says what to do when the camera is refused', async () => {
    rig = await openRig({ arguments: [CAMERA[0]!, '--deny-permission-prompts'] })
    const user = await begin()
    await user.see('It goes on by itself')
    await rig.page.goto(`${server.url}#/collect/camera`)
    await user.tap('Start the camera')
    await user.see(/The browser did not give this page the camera: allow the camera/)
    expect(await user.button('Try the camera again').isVisible()).toBe(true)
  })
})
