import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { MotionSample, MotionSource } from '../../src/sensors/motion-source'
import type { PhoneEnvironment } from '../../src/sensors/phone-environment'
import { createPhoneSource } from '../../src/sensors/phone-source'

/** A browser reduced to what the source sees of it; the real one is tested in tests/browser. */
class FakePage implements PhoneEnvironment {
  secure = true
  motionEvents: PhoneEnvironment['motionEvents'] = {}
  window = new EventTarget()
  document = Object.assign(new EventTarget(), {
    visibilityState: 'visible' as DocumentVisibilityState,
  })
  nowMs = () => Date.now()

  /** Sends an event as browsers do; null fields when there is no sensor. */
  send(z: number | null = 9.8, tMs = Date.now()): void {
    const event = Object.assign(new Event('devicemotion'), {
      accelerationIncludingGravity: { x: z === null ? null : 0, y: z === null ? null : 0, z },
      rotationRate: z === null ? null : { alpha: 1, beta: 2, gamma: 3 },
    })
    Object.defineProperty(event, 'timeStamp', { value: tMs })
    this.window.dispatchEvent(event)
  }

  async stream(durationMs: number, z: number | null = 9.8): Promise<void> {
    for (let t = 0; t < durationMs; t += 20) {
      await vi.advanceTimersByTimeAsync(20)
      this.send(z)
    }
  }

  turn(visibilityState: DocumentVisibilityState): void {
    this.document.visibilityState = visibilityState
    this.document.dispatchEvent(new Event('visibilitychange'))
  }
}

let page: FakePage
let source: MotionSource
let samples: MotionSample[]
let statuses: string[]

beforeEach(() => {
  vi.useFakeTimers()
  page = new FakePage()
  source = createPhoneSource(page)
  samples = []
  statuses = []
  source.subscribe((sample) => samples.push(sample))
  source.onStatus((status) => statuses.push(status))
})

afterEach(() => {
  source.stop()
  vi.useRealTimers()
})

async function startRunning(): Promise<void> {
  const started = source.start()
  await page.stream(40)
  expect(await started).toBe('running')
}

describe('starting', () => {
  it('runs with the first reading and passes on every one', async () => {
    await startRunning()
    await page.stream(200)
    expect(samples).toHaveLength(12)
    expect(samples[0]).toMatchObject({ az: 9.8, gx: 1, gy: 2, gz: 3 })
    expect(source.facts()).toMatchObject({ simulated: false, hasGyro: true, rateHz: 50 })
    expect(statuses).toEqual(['starting', 'running'])
  })

  it('says insecure and asks for nothing on a page without HTTPS', async () => {
    page.secure = false
    expect(await source.start()).toBe('insecure')
  })

  it('says no sensor where the browser has no motion events', async () => {
    page.motionEvents = undefined
    expect(await source.start()).toBe('no-sensor')
  })

  it('says no sensor after a second of events with null fields', async () => {
    const started = source.start()
    await page.stream(1300, null)
    expect(await started).toBe('no-sensor')
    expect(samples).toEqual([])
  })

  it('takes up a sensor that comes late after all', async () => {
    const started = source.start()
    await page.stream(1300, null)
    await started
    await page.stream(40)
    expect(source.status()).toBe('running')
  })

  it.each(['denied', 'prompt', 'default'])('takes %s for a no', async (answer) => {
    page.motionEvents = { requestPermission: async () => answer }
    expect(await source.start()).toBe('denied')
    page.send()
    expect(samples).toEqual([])
  })

  it('takes a rejection, as without a tap, for a no, and may ask again', async () => {
    let tapped = false
    page.motionEvents = {
      requestPermission: async () => {
        if (!tapped) throw new DOMException('no tap', 'NotAllowedError')
        return 'granted'
      },
    }
    expect(await source.start()).toBe('denied')
    tapped = true
    await startRunning()
  })

  it('asks within the tap, before any pause', () => {
    const requestPermission = vi.fn(async () => 'granted')
    page.motionEvents = { requestPermission }
    void source.start()
    expect(requestPermission).toHaveBeenCalledOnce()
  })

  it('twice asks once', async () => {
    const requestPermission = vi.fn(async () => 'granted')
    page.motionEvents = { requestPermission }
    const both = [source.start(), source.start()]
    await page.stream(40)
    expect(await Promise.all(both)).toEqual(['running', 'running'])
    expect(requestPermission).toHaveBeenCalledOnce()
  })

  it('is over when it is stopped meanwhile', async () => {
    const started = source.start()
    await vi.advanceTimersByTimeAsync(10)
    source.stop()
    expect(await started).toBe('stopped')
    page.send()
    expect(samples).toEqual([])
  })
})

describe('running', () => {
  it('is lost after a second of silence and runs again with the next reading', async () => {
    await startRunning()
    await vi.advanceTimersByTimeAsync(900)
    expect(source.status()).toBe('running')
    await vi.advanceTimersByTimeAsync(400)
    expect(source.status()).toBe('lost')
    await page.stream(20)
    expect(source.status()).toBe('running')
  })

  it('is lost when permission is taken away, which shows as null fields', async () => {
    await startRunning()
    await page.stream(1300, null)
    expect(source.status()).toBe('lost')
  })

  it('is lost at once when the page is hidden', async () => {
    await startRunning()
    page.turn('hidden')
    expect(source.status()).toBe('lost')
    page.turn('visible')
    await page.stream(20)
    expect(source.status()).toBe('running')
  })

  it('leaves out an event older than the one before', async () => {
    await startRunning()
    const count = samples.length
    page.send(9.8, Date.now() - 500)
    expect(samples).toHaveLength(count)
  })

  it('keeps the sign that was found', async () => {
    await startRunning()
    expect(source.facts().accelSign).toBe(0)
    source.setAccelSign(-1)
    await page.stream(100)
    expect(source.facts().accelSign).toBe(-1)
  })

  it('sends nothing to those who left', async () => {
    await startRunning()
    const other: MotionSample[] = []
    const leave = source.subscribe((sample) => other.push(sample))
    await page.stream(20)
    leave()
    await page.stream(100)
    expect(other).toHaveLength(1)
  })
})
