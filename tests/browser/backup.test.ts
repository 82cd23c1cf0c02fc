import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { unzipSync } from 'fflate'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { readLibraryFile } from '../../src/shared/format/library-file'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { openRig, type Rig } from './rig'

/** The built app on one phone: all of it into a file, the phone wiped, and back from the file. */
describeWithTools('backup in a real browser', ['chromium'], () => {
  let server: Awaited<ReturnType<typeof serveBuiltApp>>
  let rig: Rig
  let backup: Uint8Array
  let takes: number

  beforeAll(async () => {
    server = await serveBuiltApp()
    rig = await openRig()
    await rig.open(server.url)
  })
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
  })

  const tap = (name: string | RegExp) => rig.page.getByRole('button', { name }).first().tap()
  const see = (text: string | RegExp, timeout = 20_000) =>
    rig.page.getByText(text).first().waitFor({ timeout })
  const toBackup = () => rig.page.goto(`${server.url}#/backup`)

  async function choose(bytes: Uint8Array, name: string): Promise<void> {
    const path = join(rig.profile.folder, name)
    writeFileSync(path, bytes)
    await rig.page.locator('input[type=file]').setInputFiles(path)
  }

  it('hands one file over that holds every library', async () => {
    await tap('Load the lantern parade demo')
    await see(/\d+ takes/, 60_000)
    await toBackup()
    const [file] = await Promise.all([rig.page.waitForEvent('download'), tap('Back up everything')])
    backup = readFileSync(await file.path())
    await see(/handed over/)
    const files = unzipSync(backup)
    const [path] = Object.keys(files).filter((one) => one.startsWith('libraries/'))
    const library = readLibraryFile(files[path!]!)
    if (!library.ok) throw new Error(library.message)
    takes = library.value.recordings.length
    expect(takes).toBeGreaterThan(100)
  })

  it('after the browser has lost everything, the file brings it back', async () => {
    const { origin } = new URL(server.url)
    await rig.page.goto('about:blank')
    await rig.session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' })
    await toBackup()
    await see('Nothing has been recorded here yet.')
    await choose(backup, 'whole.zip')
    await see(/Not on this phone: comes back as it was/)
    await tap('Restore')
    await see(`${takes} recordings restored.`, 60_000)
    await see(/nothing to do/)
  })

  it('a file cut in half gives back what is whole and names the rest', async () => {
    const { origin } = new URL(server.url)
    await rig.page.goto('about:blank')
    await rig.session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' })
    await toBackup()
    await choose(backup.subarray(0, backup.length / 2), 'half.zip')
    await see(/damaged. What is whole can be restored/)
    const lost = await rig.page.getByText(/in the file damaged/).textContent()
    const lostCount = Number(/^(\d+)/.exec(lost ?? '')?.[1])
    expect(lostCount).toBeGreaterThan(10)
    expect(lostCount).toBeLessThan(takes * 0.75)
    await tap('Restore')
    await see(`${takes - lostCount} recordings restored.`, 60_000)
  })

  it('what is no backup is refused in one sentence', async () => {
    await choose(new Uint8Array(3000), 'picture.zip')
    await see('This is no backup and no library file, or nothing in it is whole.')
  })
})
