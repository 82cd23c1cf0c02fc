import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { build } from 'vite'
import { repositoryPath } from '../../src/build/paths'
import { buildServiceWorker } from '../../src/build/service-worker'
import type { OfflineState } from '../../src/offline/updater'
import type { FixtureWindow } from './fixture/main'

/** A host's folder with a small app below a path of its own, as on a shared host. */
export interface FixtureHost {
  folder: string
  /** Path of the app on the host. */
  path: string
  /** Puts this version in the place of the one before, as an upload would. */
  publish(version: string): Promise<void>
  remove(): void
}

export function makeFixtureHost(): FixtureHost {
  const folder = mkdtempSync(join(tmpdir(), 'movewright-host-'))
  const appFolder = join(folder, 'props')
  return {
    folder,
    path: 'props/',
    async publish(version) {
      await build({
        configFile: false,
        logLevel: 'error',
        root: repositoryPath('tests/offline/fixture'),
        base: './',
        define: { FIXTURE_VERSION: JSON.stringify(version) },
        build: { outDir: appFolder, emptyOutDir: true, modulePreload: false },
      })
      await buildServiceWorker(appFolder)
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  }
}

type InPage = { fixture: FixtureWindow }

export function versionOf(page: Page): Promise<string> {
  return page.evaluate(() => (window as unknown as InPage).fixture.version)
}

export function stateOf(page: Page): Promise<OfflineState> {
  return page.evaluate(() => (window as unknown as InPage).fixture.updater.state())
}

export async function waitForState(page: Page, state: OfflineState): Promise<void> {
  await page.waitForFunction((wanted) => {
    return (window as unknown as InPage).fixture.updater.state() === wanted
  }, state)
}

export function setRecording(page: Page, recording: boolean): Promise<void> {
  return page.evaluate((value) => {
    const { fixture } = window as unknown as InPage
    fixture.recording = value
  }, recording)
}

export function apply(page: Page): Promise<boolean> {
  return page.evaluate(() => (window as unknown as InPage).fixture.updater.apply())
}

export function latePartOf(page: Page): Promise<string> {
  return page.evaluate(() => (window as unknown as InPage).fixture.loadLatePart())
}

/** As a browser does by itself from time to time. */
export async function lookForUpdate(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready
    await registration.update()
  })
}
