import { loadavg } from 'node:os'
import type { Page } from 'playwright-core'
import type { Figure } from '../figure'

const RATE_HZ = 200
const STEP_MS = 1000 / RATE_HZ
/** A phone's processor beside this one, by the browser's own throttling. */
const THROTTLE = 4

const PREFERENCES = `localStorage.setItem('movewright.preferences',
  JSON.stringify({ accelSign: 1, sound: false }))`

/**
 * A sensor on the page's own thread: every reading that is due is given to the app as a `devicemotion`
 * event with the time at which it was due, as a system does that queues them. Where the thread is busy
 * they come late and together; how late is kept.
 */
const SENSOR = `{
  const beganMs = performance.now()
  window.fed = { worstLateMs: 0 }
  let sent = 0
  setInterval(() => {
    const now = performance.now()
    for (; beganMs + sent * ${STEP_MS} <= now; sent++) {
      const atMs = beganMs + sent * ${STEP_MS}
      const swing = 3 * Math.sin(sent / 40)
      const event = new Event('devicemotion')
      Object.defineProperties(event, {
        timeStamp: { value: atMs },
        accelerationIncludingGravity: { value: { x: swing, y: 1, z: 9.7 } },
        rotationRate: { value: { alpha: 20 * swing, beta: 5, gamma: -swing } },
      })
      window.fed.worstLateMs = Math.max(window.fed.worstLateMs, now - atMs)
      dispatchEvent(event)
    }
  }, ${STEP_MS})
}`

/** Facts of the one background that the database holds. */
const STORED = `new Promise((resolve, reject) => {
  const opening = indexedDB.open('movewright')
  opening.onerror = () => reject(opening.error)
  opening.onsuccess = () => {
    const db = opening.result
    const asked = db.transaction('recordings').objectStore('recordings').getAll()
    asked.onsuccess = () => {
      db.close()
      resolve(asked.result.filter((one) => one.kind === 'background').map(
        ({ sampleCount, durationMs, gaps }) => ({ sampleCount, durationMs, gaps: gaps.length })))
    }
  }
})`

interface Stored {
  sampleCount: number
  durationMs: number
  gaps: number
}

/**
 * Records background for some minutes through the app's own way, sensor to database, at 200 Hz on a
 * page slowed down four times. Readings are exactly 5 ms apart, so those that are missing show in the
 * stored length; none may be missing within it, and it must be as long as the recording ran.
 */
export async function benchRecording(page: Page, url: string, minutes: number): Promise<Figure[]> {
  const session = await page.context().newCDPSession(page)
  await page.addInitScript(PREFERENCES)
  await page.addInitScript(SENSOR)
  await page.goto(url)
  await page.getByRole('button', { name: 'Load the lantern parade demo' }).click()
  await page.locator('.gesture-card').first().waitFor({ timeout: 300_000 })
  const before = await page.evaluate<Stored[]>(STORED)
  await page.evaluate(`location.hash = '#/background'`)
  await page.getByRole('button', { name: /Start the sensor/ }).click()
  const record = page.getByRole('button', { name: 'Record background' })
  await record.waitFor({ timeout: 60_000 })
  await session.send('Emulation.setCPUThrottlingRate', { rate: THROTTLE })
  await page.evaluate('window.fed.worstLateMs = 0')
  await record.click()
  const stop = page.getByRole('button', { name: 'Stop and keep' })
  await stop.waitFor({ timeout: 60_000 })
  const began = performance.now()
  await page.waitForTimeout(minutes * 60_000)
  const ranMs = performance.now() - began
  await stop.click()
  await record.waitFor({ timeout: 120_000 })
  const late = await page.evaluate<number>('window.fed.worstLateMs')
  await session.send('Emulation.setCPUThrottlingRate', { rate: 1 })
  const stored = await page.evaluate<Stored[]>(STORED)
  const own = stored.filter(({ sampleCount, durationMs }) => {
    return !before.some((one) => one.sampleCount === sampleCount && one.durationMs === durationMs)
  })
  const [recorded] = own
  if (own.length !== 1 || recorded === undefined) throw new Error(`${own.length} were recorded.`)
  const due = Math.round(Math.max(recorded.durationMs, ranMs) / STEP_MS) + 1
  const note = `${(recorded.durationMs / 60_000).toFixed(2)} min at ${RATE_HZ} Hz, ${recorded.sampleCount} stored, ${recorded.gaps} gaps, ${THROTTLE} x slower, load ${loadavg()[0]!.toFixed(1)}`
  return [
    {
      figure: 'record_dropped_samples',
      value: Math.max(0, due - recorded.sampleCount),
      unit: '1',
      note,
    },
    { figure: 'record_worst_delay_ms', value: late, unit: 'ms', note: `thread busy; ${note}` },
  ]
}
