import { afterAll, beforeAll, expect, it } from 'vitest'
import { DIST } from '../../src/build/paths'
import type { Plan } from '../../src/shared/collect/plan'
import { decodePlanLink } from '../../src/shared/collect/plan-link'
import type { Session } from '../../src/shared/collect/session'
import { sessionFileName, writeSessionFile } from '../../src/shared/collect/session-file'
import { readCode } from '../../src/shared/qr/read-code'
import { sampleSessionFile } from '../shared/collect/samples'
import { describeWithTools } from '../support/tools'
import { serveWebdav, type WebdavServer } from '../support/webdav-server'
import { openRig, type Rig } from './rig'

const TAKES = 16
const RECORDINGS = TAKES + 1

/**
 * The designer's side of collecting, in the built app and a real browser, served by a real server with
 * a shared folder beside the app. Each step goes on where the one before ended.
 */
describeWithTools('collecting on the designer’s side', ['chromium', 'lighttpd'], () => {
  let server: WebdavServer
  let rig: Rig
  let plan: Plan

  beforeAll(async () => {
    server = await serveWebdav({ root: DIST })
    rig = await openRig()
    await rig.open(server.url)
  })
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
  })

  const tap = (name: string | RegExp) => rig.page.getByRole('button', { name }).first().tap()
  const follow = (name: string | RegExp) => rig.page.getByRole('link', { name }).first().tap()
  const see = (text: string | RegExp, timeout = 30_000) =>
    rig.page.getByText(text).first().waitFor({ timeout })
  const go = (hash: string) => rig.page.goto(`${server.url}${hash}`)

  /** A session of the plan, as another phone would make it. */
  function sessionOf(number: number, change: Partial<Session> = {}) {
    const id = number.toString(16).padStart(32, '0')
    const gestures = plan.gestures.map(({ gestureId, name }) => ({ id: gestureId, name }))
    const { id: planId, libraryId } = plan
    const facts = { id, testerKey: id, testerCode: `T${number}`, planId, libraryId, gestures }
    const file = sampleSessionFile(TAKES, { ...facts, ...change }, number)
    const bytes = writeSessionFile(file)
    return { name: sessionFileName(file.session, bytes), mimeType: 'application/zip', bytes }
  }

  const choose = (files: { name: string; mimeType: string; bytes: Uint8Array }[]) =>
    rig.page
      .locator('input[type=file]')
      .first()
      .setInputFiles(
        files.map(({ name, mimeType, bytes }) => ({ name, mimeType, buffer: Buffer.from(bytes) })),
      )

  const takesOf = (tester: string) =>
    rig.page.locator('.tester-table').first().getByRole('rowheader', { name: tester }).count()

  it('writes a plan and shows it as a code that holds it, demonstration and all', async () => {
    await tap('Load the lantern parade demo')
    await rig.page.locator('.moves-grid').waitFor({ timeout: 60_000 })
    await follow('Collect from testers')
    await tap('Write a plan')
    await rig.page.getByLabel('Raise', { exact: true }).selectOption('3')
    await rig.page.getByLabel('Bow', { exact: true }).selectOption('0')
    await tap('Show a take')
    await rig.page.getByLabel('Demonstration').selectOption({ index: 2 })
    await see('Testers see one of your takes')
    await follow('Show the code')
    await rig.page.locator('.qr-code').waitFor()
    const read = readCode(await pictureOf(rig))
    expect(read).toMatch(new RegExp(`^${server.url}#/join/`))
    const decoded = decodePlanLink(read?.split('#/join/')[1] ?? '')
    expect(decoded.ok).toBe(true)
    if (decoded.ok) plan = decoded.value
    expect(plan.gestures.map(({ name }) => name)).not.toContain('Bow')
    expect(plan.gestures[0]).toMatchObject({ name: 'Raise', takes: 3 })
    expect(plan.gestures[0]?.demonstration?.values.length).toBeGreaterThan(60)
  })

  it('brings files home when agreed to, says what is wrong with others, and undoes it', async () => {
    await go('#/collect')
    const whole = sessionOf(1)
    await choose([
      whole,
      sessionOf(2),
      { ...whole, name: 'empty.zip', bytes: new Uint8Array(0) },
      { ...whole, name: 'cut.zip', bytes: whole.bytes.slice(0, 900) },
    ])
    await see(`${2 * RECORDINGS} recordings are new`)
    await see('empty.zip: The file is empty (0 bytes)')
    await see('cut.zip: This is not a ZIP file, or its end is missing')
    await tap(`Store ${2 * RECORDINGS} recordings`)
    await see('2 sessions brought home')
    await tap('Undo')
    await see('No session was brought home yet')
    await choose([whole, sessionOf(2)])
    await tap(/^Store/)
    await see('2 sessions brought home')
  })

  it('doubles nothing when the same session comes again', async () => {
    await choose([sessionOf(1)])
    await see(`Everything in it is here already: ${RECORDINGS} recordings.`)
    await tap('Done')
  })

  it('compares testers, and a take that lies far out can be dropped for good', async () => {
    await follow('Compare testers')
    await tap('Compare the takes')
    await see(/far from the others$/, 120_000)
    const before = await rig.page.locator('.far-take').count()
    expect(before).toBeGreaterThan(3)
    await tap('Drop')
    await see('Take dropped.')
    await rig.page
      .locator('.far-take')
      .nth(before - 1)
      .waitFor({ state: 'detached' })
    await go('#/collect')
    await choose([sessionOf(1), sessionOf(2)])
    await see('Stays out: 1 take dropped here before.')
    await tap('Done')
  })

  it('fetches what other phones sent to the shared folder, and sends nothing by itself', async () => {
    const sent = sessionOf(3)
    await fetch(new URL(sent.name, server.folderUrl), {
      method: 'PUT',
      body: sent.bytes as Uint8Array<ArrayBuffer>,
    })
    await tap('Use a shared folder')
    await rig.page.getByLabel('Address of the folder').fill('https://elsewhere.example.org/x/')
    await tap('Use it')
    await see(/This copy of the app may only talk to http:\/\/localhost/)
    await rig.page.getByLabel('Address of the folder').fill('/nowhere/')
    await tap('Use it')
    await see(/^(There is no such folder|The server (knows no WebDAV|does not show this folder))/)
    await rig.page.getByLabel('Address of the folder').fill('/team/')
    await tap('Use it')
    await tap('Fetch new sessions')
    await see(`${RECORDINGS} recordings are new`)
    await tap(/^Store/)
    await see('3 sessions brought home')
    await tap('Fetch new sessions')
    await see('Nothing new in it.')
  })

  it('takes a tester out for good: what comes again stays out', async () => {
    await follow('Compare testers')
    await rig.page.getByLabel("Tester's code").selectOption('T3')
    await tap('Withdraw T3')
    await see('All recordings of T3 withdrawn.')
    expect(await takesOf('T3')).toBe(0)
    await go('#/collect')
    await choose([sessionOf(3)])
    await see(`Stays out: ${RECORDINGS} recordings of testers who withdrew.`)
    await tap('Done')
  })

  it.each(['dropped', 'pasted'] as const)('takes files that are %s on it', async (way) => {
    await go('#/collect')
    await rig.page.locator('.drop-zone').waitFor()
    const { name, bytes } = sessionOf(5)
    await rig.page.evaluate(
      ({ name, base64, way }) => {
        const content = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0))
        const data = new DataTransfer()
        data.items.add(new File([content], name, { type: 'application/zip' }))
        const event =
          way === 'pasted'
            ? new ClipboardEvent('paste', { clipboardData: data, bubbles: true })
            : new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true })
        document.querySelector('.drop-zone')?.dispatchEvent(event)
      },
      { name, base64: Buffer.from(bytes).toString('base64'), way },
    )
    await see(`${RECORDINGS} recordings are new`)
    await tap('Store nothing')
    await see('Collect from testers')
  })

  it('takes files that another app shared to it', async () => {
    const { name, mimeType, bytes } = sessionOf(4)
    await rig.page.evaluate(async () => {
      await navigator.serviceWorker.ready
    })
    // As the system does it: a form is posted to the address of the manifest.
    const sharing = await rig.context.newPage()
    await sharing.setContent(
      `<form action="${server.url}share" method="post" enctype="multipart/form-data">
        <input type="file" name="files"><button>Share</button>
      </form>`,
    )
    const file = { name, mimeType, buffer: Buffer.from(bytes) }
    await sharing.locator('input').setInputFiles(file)
    await sharing.locator('button').click()
    await sharing.getByText(`${RECORDINGS} recordings are new`).waitFor()
    expect(new URL(sharing.url()).hash).toBe('#/collect/bring')
  })
})

/** The screen's code as pixels, as a camera would see it. */
async function pictureOf({ page, context }: Rig) {
  const png = (await page.locator('.qr-code').screenshot()).toString('base64')
  const blank = await context.newPage()
  const seen = await blank.evaluate(async (data) => {
    const image = new Image()
    image.src = `data:image/png;base64,${data}`
    await image.decode()
    const canvas = document.createElement('canvas')
    Object.assign(canvas, { width: image.width, height: image.height })
    const brush = canvas.getContext('2d')
    brush?.drawImage(image, 0, 0)
    const pixels = brush?.getImageData(0, 0, image.width, image.height).data ?? []
    return { width: image.width, height: image.height, data: [...pixels] }
  }, png)
  await blank.close()
  return { ...seen, data: Uint8ClampedArray.from(seen.data) }
}
