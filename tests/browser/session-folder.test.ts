import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { DIST } from '../../src/build/paths'
import { readSessionFile } from '../../src/shared/collect/session-file'
import { describeWithTools } from '../support/tools'
import { serveWebdav } from '../support/webdav-server'
import { examplePlan, joinAddress } from './collect-plan'
import { openRig } from './rig'
import { TesterUser } from './tester-user'

/** Two phones and a server between them, the app on the server itself. */
describeWithTools('a session sent to the shared folder', ['chromium', 'lighttpd'], () => {
  it('goes from the tester’s phone by one tap, and from the folder into the library', async () => {
    const server = await serveWebdav({ root: DIST })
    const phone = await openRig()
    const desk = await openRig()
    try {
      const tester = new TesterUser(phone)
      await phone.open(joinAddress(server.url, { ...examplePlan(), folder: server.folderUrl }))
      await tester.tap('Take part')
      await tester.tap('I agree')
      await tester.tap('Right hand')
      await tester.layFlat()
      await tester.tap('Start')
      await tester.perform('raise', 'Raise')
      await tester.reach(1)
      await tester.tap('Pause')
      await tester.tap('Finish')
      await tester.see('1 of 6 movements were kept.')
      expect(readdirSync(server.folder)).toEqual([])
      await tester.tap('Send it to the shared folder')
      await tester.see('Sent. It is in the shared folder.')
      const [name = ''] = readdirSync(server.folder)
      const read = readSessionFile(new Uint8Array(readFileSync(join(server.folder, name))))
      expect(read.ok && read.value.recordings).toHaveLength(1)

      await desk.open(server.url)
      const button = (text: string | RegExp) =>
        desk.page.getByRole('button', { name: text }).first()
      await button('Start an own library').tap()
      await desk.page.getByLabel('Name of the library').fill('North lantern')
      await button('Create').tap()
      await desk.page.waitForURL(/#\/moves$/)
      await desk.page.goto(`${server.url}#/collect`)
      await button('Use a shared folder').tap()
      await desk.page.getByLabel('Address of the folder').fill('/team/')
      await button('Use it').tap()
      await button('Fetch new sessions').tap()
      await button('Store 1 recording').tap()
      await desk.page.getByText('1 session brought home').waitFor()
    } finally {
      for (const rig of [phone, desk]) {
        await rig.close()
        rig.profile.remove()
      }
      await server.close()
    }
  }, 120_000)
})
