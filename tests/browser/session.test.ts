import { readFileSync } from 'node:fs'
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest'
import type { RunningServer } from '../../src/build/static-server'
import { readSessionFile } from '../../src/shared/collect/session-file'
import { createRandom } from '../../src/shared/statistics/random'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { examplePlan, joinAddress } from './collect-plan'
import { performance, stillness } from './hand-player'
import { openRig, type Rig } from './rig'
import { TesterUser } from './tester-user'

/** Ids of the recordings in the database, deleted ones left out. */
const STORED = `new Promise((resolve, reject) => {
  const opening = indexedDB.open('movewright')
  opening.onerror = () => reject(opening.error)
  opening.onsuccess = () => {
    const all = opening.result.transaction('recordings').objectStore('recordings').getAll()
    all.onsuccess = () => {
      opening.result.close()
      resolve(all.result.filter((one) => one.deletedAt === null).map((one) => one.id).sort())
    }
  }
})`

/** Whose sessions of which part are stored. */
const RUNS = `new Promise((resolve) => {
  indexedDB.open('movewright').onsuccess = ({ target }) => {
    const all = target.result.transaction('sessions').objectStore('sessions').getAll()
    all.onsuccess = () => {
      target.result.close()
      resolve(
        all.result.map(({ value }) => ({
          testerCode: value.testerCode,
          hand: value.hand,
          part: value.plan.part.number,
        })),
      )
    }
  }
})`

/** Fills the storage of this origin to the last kilobyte with data of something else. */
const FILL = `new Promise((resolve, reject) => {
  const opening = indexedDB.open('other data')
  opening.onupgradeneeded = () => opening.result.createObjectStore('blocks', { autoIncrement: true })
  opening.onerror = () => reject(opening.error)
  opening.onsuccess = () => {
    const put = (bytes) => {
      const block = crypto.getRandomValues(new Uint8Array(bytes))
      const tx = opening.result.transaction('blocks', 'readwrite')
      tx.objectStore('blocks').add(block)
      tx.oncomplete = () => put(bytes)
      tx.onabort = () => {
        if (bytes > 1000) return put(Math.floor(bytes / 8))
        opening.result.close()
        resolve(null)
      }
    }
    put(65_536)
  }
})`

/** Room of the origin where a disk is full. */
const QUOTA_BYTES = 4_000_000

/** Fills all but a little, so that the rest is filled long before the app ends its wait for a movement. */
const FILL_NEARLY = `new Promise((resolve, reject) => {
  const opening = indexedDB.open('other data')
  opening.onupgradeneeded = () => opening.result.createObjectStore('blocks', { autoIncrement: true })
  opening.onerror = () => reject(opening.error)
  opening.onsuccess = async () => {
    const { usage } = await navigator.storage.estimate()
    const tx = opening.result.transaction('blocks', 'readwrite')
    for (let room = ${QUOTA_BYTES} - usage; room > 400_000; room -= 65_536) {
      tx.objectStore('blocks').add(crypto.getRandomValues(new Uint8Array(65_536)))
    }
    tx.onabort = () => reject(tx.error)
    tx.oncomplete = () => {
      opening.result.close()
      resolve(null)
    }
  }
})`

/** What a screen reader is told as it happens. */
const SPOKEN = `document.querySelector('.session-line').textContent.replace(/\\s+/g, ' ').trim()`

describeWithTools('a tester’s session on a phone that never saw the app', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig
  let user: TesterUser
  const plan = examplePlan()

  beforeAll(async () => {
    server = await serveBuiltApp()
  })
  afterAll(() => server.close())
  beforeEach(async () => {
    rig = await openRig()
    user = new TesterUser(rig)
  })
  afterEach(async () => {
    await rig.close()
    rig.profile.remove()
  })

  async function toFirstPrompt(): Promise<void> {
    await rig.open(joinAddress(server.url, plan))
    await user.tap('Take part')
    await user.tap('I agree')
    await user.tap('Right hand')
    await user.layFlat()
  }

  it('has its first take stored after five taps and twenty seconds of the user at most', async () => {
    await toFirstPrompt()
    await user.tap('Start')
    await user.perform('raise', 'Raise')
    await user.reach(1)
    expect(await rig.look<string[]>(STORED)).toHaveLength(1)
    console.log(`first take: ${user.taps} taps, ${user.seconds.toFixed(1)} s of user steps`)
    expect(user.taps).toBeLessThanOrEqual(5)
    expect(user.seconds).toBeLessThanOrEqual(20)
  })

  it('goes on where it stood after the browser was killed in the middle of a movement', async () => {
    await toFirstPrompt()
    await user.tap('Start')
    await user.perform('raise', 'Raise')
    await user.reach(1)
    await user.perform('raise', 'Raise')
    await user.reach(2)
    const before = await rig.look<string[]>(STORED)
    expect(before).toHaveLength(2)
    const address = await rig.look<string>('location.href')
    await user.see('Now: Raise!')
    await rig.sensors.play(stillness(1200, 9))
    await rig.kill()

    rig = await openRig({ profile: rig.profile })
    user = new TesterUser(rig)
    // As from the home screen: the app starts in its library, and shows the way back.
    await rig.open(server.url)
    await user.see(/The session of \w{7} stands at 2 of 6\./)
    await rig.page.getByRole('link', { name: 'Go on' }).tap()
    expect(await rig.look<string>('location.href')).toBe(address)
    await user.button('Start').waitFor({ timeout: 40_000 })
    expect(await user.done()).toBe(2)
    expect(await rig.look<string[]>(STORED)).toEqual(before)
    await user.tap('Start')
    await user.perform('raise', 'Raise')
    await user.reach(3)
    expect(await rig.look<string[]>(STORED)).toHaveLength(3)
  }, 120_000)

  it('loses no finished take over kills at random moments', async () => {
    const long = examplePlan({ gestures: plan.gestures.map((one) => ({ ...one, takes: 30 })) })
    await rig.open(joinAddress(server.url, long))
    await user.tap('Take part')
    await user.tap('I agree')
    await user.tap('Right hand')
    await user.layFlat()
    const address = await rig.look<string>('location.href')
    const random = createRandom(17)
    let finished: string[] = []
    for (let kill = 0; kill < 3; kill++) {
      await user.tap('Start')
      await user.perform('raise', 'Raise')
      await user.reach(finished.length + 1)
      // The movement after it, from getting ready to being stored, takes about five seconds.
      const restMs = random.uniform(0, 5000)
      await rig.sensors.play(performance('raise', 70 + kill, restMs))
      finished = await rig.look<string[]>(STORED)
      await rig.kill()
      rig = await openRig({ profile: rig.profile })
      user = new TesterUser(rig)
      await rig.open(address)
      await user.button('Start').waitFor({ timeout: 40_000 })
      const stored = await rig.look<string[]>(STORED)
      expect(stored).toEqual(expect.arrayContaining(finished))
      // What was stored is counted, and nothing twice.
      expect(await user.done()).toBe(stored.length)
      finished = stored
    }
    expect(finished.length).toBeGreaterThanOrEqual(3)
  }, 180_000)

  it('holds a take that storage had no room for, and stores it when there is room', async () => {
    const origin = new URL(server.url).origin
    // Before the first write: the browser remembers for a while how much room there was.
    await rig.session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: QUOTA_BYTES })
    await toFirstPrompt()
    await rig.look('navigator.serviceWorker.ready.then(() => null)')
    await rig.look(FILL_NEARLY)
    await user.tap('Start')
    await user.perform('raise', 'Raise')
    await user.reach(1)
    await user.see('Now: Raise!')
    await rig.look(FILL)
    await user.perform('raise', 'Raise')
    await user.keepUntil(rig.page.getByText(/Not stored yet/))
    expect(await rig.look<string[]>(STORED)).toHaveLength(1)

    await rig.look(`new Promise((resolve) => {
      indexedDB.deleteDatabase('other data').onsuccess = resolve
    }).then(() => null)`)
    await rig.session.send('Storage.overrideQuotaForOrigin', { origin })
    await expect
      .poll(
        async () => {
          if (await user.button('Try again').isVisible()) await user.tap('Try again')
          return rig.look<string[]>(STORED)
        },
        { timeout: 60_000, interval: 1500 },
      )
      .toHaveLength(2)
  })

  it('takes the last take back, ends early, and hands over what was kept as a file', async () => {
    await toFirstPrompt()
    await user.tap('Start')
    await user.perform('raise', 'Raise')
    await user.reach(1)
    await user.perform('raise', 'Raise')
    await user.reach(2)
    await user.tap('Pause')
    await user.tap('Undo the last')
    await user.see('1 of 6 done')
    await user.tap('Finish')
    await user.see('1 of 6 movements were kept.')
    const [file] = await Promise.all([rig.page.waitForEvent('download'), user.tap('Hand it over')])
    const read = readSessionFile(new Uint8Array(readFileSync(await file.path())))
    if (!read.ok) throw new Error(read.message)
    const { session, recordings } = read.value
    expect(session).toMatchObject({ planId: plan.id, libraryId: plan.libraryId, hand: 'right' })
    expect(recordings.map(({ recording }) => recording)).toMatchObject([
      {
        kind: 'take',
        gestureId: 'gesture-raise',
        testerCode: session.testerCode,
        sessionId: session.id,
        source: 'phone',
        device: { accelSign: 1 },
      },
    ])
  })

  it('deletes a whole session with what it holds, and brings it back while the visit lasts', async () => {
    await toFirstPrompt()
    await user.tap('Start')
    await user.perform('raise', 'Raise')
    await user.reach(1)
    await user.tap('Pause')
    await user.tap('Finish')
    await user.see('1 of 6 movements were kept.')
    await user.tap('Delete this session')
    await user.see(/^Session \w{7} deleted\.$/)
    expect(await rig.look<string[]>(STORED)).toHaveLength(0)
    await user.tap('Undo')
    await user.see(/The session of \w{7} is over, with 1 of 6 kept\./)
    expect(await rig.look<string[]>(STORED)).toHaveLength(1)
  })

  it('rests when it is time, and keeps what a kill left of the background', async () => {
    const full = examplePlan({
      gestures: plan.gestures.map((one) => ({ ...one, takes: 1 })),
      restEvery: 1,
      restMs: 60_000,
      backgroundMs: 20_000,
    })
    await rig.open(joinAddress(server.url, full))
    await user.tap('Take part')
    await user.tap('I agree')
    await user.tap('Right hand')
    await user.layFlat()
    const address = await rig.look<string>('location.href')
    await user.tap('Start')
    await user.perform('raise', 'Raise')
    await user.reach(1)
    await user.tap('Go on now')
    await user.tap('Skip this')
    await user.see('Walk, talk, point')
    await user.tap('Start')
    await user.button('Enough').waitFor()
    await rig.sensors.play(stillness(4500, 5))
    await rig.kill()

    rig = await openRig({ profile: rig.profile })
    user = new TesterUser(rig)
    await rig.open(address)
    await user.see('Walk, talk, point')
    await user.tap('Start')
    await user.button('Enough').waitFor()
    const left = await rig.page.locator('.session-left').textContent()
    expect(Number.parseInt(left ?? '', 10)).toBeLessThan(18)
    await rig.sensors.play(stillness(1500, 6))
    await user.tap('Enough')
    await user.see('1 of 2 movements were kept.')
    expect(await rig.look<string[]>(STORED)).toHaveLength(3)
  })

  it('takes who comes for the next part of a plan for the same tester, and asks no hand again', async () => {
    const first = examplePlan({ part: { number: 1, of: 2 } })
    const second = examplePlan({ part: { number: 2, of: 2 } })
    await rig.open(joinAddress(server.url, first))
    await user.tap('Take part')
    await user.tap('I agree')
    await user.tap('Left hand')
    await user.layFlat()
    await rig.page.goto(joinAddress(server.url, second))
    await user.tap(/Go on as \w{7}/)
    await user.tap('I agree')
    await user.button('Start').waitFor()
    const runs = await rig.look<{ testerCode: string; hand: string; part: number }[]>(RUNS)
    expect(runs.map(({ part }) => part).sort()).toEqual([1, 2])
    expect(runs[0]).toMatchObject({ testerCode: runs[1]?.testerCode, hand: 'left' })
    expect(runs[1]?.hand).toBe('left')
  })

  it('can be led by keyboard, and says each step to a screen reader', async () => {
    await rig.open(joinAddress(server.url, plan))
    await press('Take part')
    await press('I agree')
    await press('Left hand')
    await user.layFlat()
    expect(await rig.look(SPOKEN)).toBe('Next: Raise, 1 of 4. Tap Start, move at the sound.')
    await press('Start')
    await rig.until(`${SPOKEN} === 'Raise. Hold still …'`)
    await rig.until(`${SPOKEN} === 'Now: Raise!'`)
    await press('Pause')
    await rig.until(`${SPOKEN} === 'Paused. Nothing is recorded.'`)
    expect(await rig.look('document.querySelector(".session-line").ariaLive')).toBe('assertive')
    expect(await rig.look<string[]>(STORED)).toHaveLength(0)
  })

  /** Tabs to a button by its name, and presses it. */
  async function press(name: string): Promise<void> {
    await user.button(name).waitFor()
    const focused = `document.activeElement?.textContent?.startsWith('${name}')`
    for (let tabs = 0; tabs < 30 && !(await rig.look<boolean>(focused)); tabs++) {
      await rig.page.keyboard.press('Tab')
    }
    await rig.until(`${focused} && document.activeElement.ariaDisabled === 'false'`)
    await rig.page.keyboard.press('Enter')
  }

  it('takes the second tap of a shaking hand for none', async () => {
    await rig.open(joinAddress(server.url, plan))
    await user.tap('Take part')
    await user.tap('I agree')
    await tapTwice('Right hand')
    await user.layFlat()
    await tapTwice('Start')
    await user.see('Now: Raise!')
    expect(await rig.look('secondTaps')).toBe(2)
  })

  /**
   * Taps, and a seventh of a second later whatever is there by then. The second tap comes out of the
   * page itself: from outside it may come when the hand of a busy computer has long stopped shaking.
   */
  async function tapTwice(name: string): Promise<void> {
    await rig.look(`void addEventListener('click', ({ clientX, clientY }) => {
      setTimeout(() => {
        document.elementFromPoint(clientX, clientY).click()
        window.secondTaps = (window.secondTaps ?? 0) + 1
      }, 150)
    }, { once: true, capture: true })`)
    await user.button(name).tap()
  }

  it('says in one sentence what is wrong with a link, and what to do', async () => {
    const address = joinAddress(server.url, plan)
    await rig.open(address.slice(0, -40))
    await user.see(/The end of this link is missing: scan the code again/)
    // Base64url of a version byte of 9 begins with "C".
    await rig.page.goto(`${server.url}#/join/CQ${address.split('/join/')[1]!.slice(2)}`)
    await user.see(/made by a newer Movewright/)
    expect(await rig.look<string[]>(STORED)).toHaveLength(0)
  })
})
