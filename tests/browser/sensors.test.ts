import { afterAll, afterEach, beforeAll, expect, it } from 'vitest'
import type { MotionFacts, MotionSample } from '../../src/sensors/motion-source'
import { SimulatedHand } from '../../src/shared/demo/simulated-hand'
import { AXES, type SampleBlock } from '../../src/shared/model/sample'
import { makeProfile } from '../support/chromium'
import { describeWithTools } from '../support/tools'
import { type PageServer, servePages } from './page-server'
import { openRig, type Rig, type RigOptions } from './rig'

/** A name that is not localhost, so that its pages are no secure context. */
const INSECURE_HOST = 'lantern.test'

describeWithTools('the phone source in a real browser', ['chromium'], () => {
  let server: PageServer
  let rig: Rig
  const cache = makeProfile()

  beforeAll(async () => {
    server = await servePages(cache.folder)
  })

  afterAll(async () => {
    await server?.close()
    cache.remove()
  })

  afterEach(async () => {
    await rig.close()
    rig.profile.remove()
  })

  async function load(options: RigOptions & { host?: string; shim?: string } = {}): Promise<void> {
    rig = await openRig(options)
    if (options.shim !== undefined) await rig.context.addInitScript(options.shim)
    await rig.open(server.pageUrl('sensors.html', options.host))
    await rig.until('window.source')
  }

  const status = () => rig.look<string>('source.status()')
  const facts = () => rig.look<MotionFacts>('source.facts()')

  async function startByTap(): Promise<void> {
    await rig.page.tap('#start')
    await rig.until('source.status() !== "stopped" && source.status() !== "starting"')
  }

  it('reads SI units on W3C axes and measures rate and rounding', async () => {
    await load()
    await startByTap()
    await rig.sensors.show([1.23, -2.34, 9.45, 10.04, -20.06, 30.02])
    // Both are set one after the other, and a reading may come between.
    await rig.until('samples.at(-1)?.ax > 1 && samples.at(-1).gx > 1')
    const last = await rig.look<MotionSample>('samples.at(-1)')
    const read = [last.ax, last.ay, last.az, last.gx, last.gy, last.gz]
    const rounded = [1.2, -2.3, 9.5, 10, -20.1, 30]
    read.forEach((value, axis) => {
      expect(Math.abs(value - rounded[axis]!)).toBeLessThan(0.1001)
      expect(Math.abs(value * 10 - Math.round(value * 10))).toBeLessThan(1e-6)
    })
    await rig.sensors.play(handMotion('swing', 2000))
    const measured = await facts()
    expect(measured).toMatchObject({
      simulated: false,
      hasGyro: true,
      accelStepMps2: 0.1,
      gyroStepDps: 0.1,
    })
    expect(measured.rateHz).toBeGreaterThan(57)
    expect(measured.rateHz).toBeLessThan(63)
  })

  it('gives back a movement that was played in, value by value and in order', async () => {
    await load()
    await startByTap()
    await rig.look('void (samples.length = 0)')
    const played = handMotion('swing', 2500)
    await rig.sensors.play(played)
    const samples = await rig.look<MotionSample[]>('samples')
    const moving = samples.filter(({ gx, gy, gz }) => Math.hypot(gx, gy, gz) > 5)
    expect(moving.length).toBeGreaterThan(50)
    // A few events may hold the accelerometer of one row and the gyroscope of the next.
    expect(shareFoundInOrder(moving, played, ['gx', 'gy', 'gz'], 3)).toBeGreaterThan(0.95)
    expect(shareFoundInOrder(moving, played, ['ax', 'ay', 'az'], 0)).toBeGreaterThan(0.95)
  })

  it('finds the sign of a phone that lies flat, and refuses one that is moved', async () => {
    await load()
    await startByTap()
    await rig.until('samples.length > 90')
    expect(await rig.look('layFlat()')).toEqual({ ok: true, value: 1 })
    await rig.sensors.play(handMotion('swing', 1600))
    expect(await rig.look('layFlat()')).toMatchObject({ ok: false, code: 'rest/moving' })
  })

  it('works without a gyroscope and says that there is none', async () => {
    await load({ sensors: ['accelerometer'] })
    await startByTap()
    await rig.until('samples.length > 10')
    expect(await facts()).toMatchObject({ hasGyro: false })
    expect(await rig.look<MotionSample>('samples.at(-1)')).toMatchObject({ gx: 0, gy: 0, gz: 0 })
  })

  it('says no sensor on a desk, within some two seconds', async () => {
    await load({ sensors: [] })
    await rig.page.tap('#start')
    await rig.until('source.status() === "no-sensor"', 2500)
    expect(await rig.look('samples.length')).toBe(0)
  })

  it('says insecure on a page that came over plain HTTP', async () => {
    const map = `--host-resolver-rules=MAP ${INSECURE_HOST} 127.0.0.1`
    await load({ host: INSECURE_HOST, arguments: [map] })
    expect(await rig.look('isSecureContext')).toBe(false)
    await startByTap()
    expect(await status()).toBe('insecure')
  })

  it('says denied when the site may not use the sensors', async () => {
    await load()
    for (const name of ['accelerometer', 'gyroscope']) {
      await rig.session.send('Browser.setPermission', {
        permission: { name },
        setting: 'denied',
        origin: new URL(rig.page.url()).origin,
      })
    }
    await startByTap()
    expect(await status()).toBe('denied')
    expect(await rig.look('samples.length')).toBe(0)
  })

  it('is lost when the sensor goes silent, and runs when it is started again', async () => {
    await load()
    await startByTap()
    await rig.until('samples.length > 10')
    await rig.sensors.disable()
    await rig.until('source.status() === "lost"', 3000)
    await rig.sensors.enable()
    expect(await rig.look('source.start()')).toBe('running')
  })

  it('on a phone that asks and inverts, as iOS does, needs a tap and finds the sign', async () => {
    await load({ shim: IOS_LIKE })
    expect(await rig.look('source.start()')).toBe('denied')
    await startByTap()
    expect(await status()).toBe('running')
    await rig.until('samples.length > 90')
    expect(await rig.look('layFlat()')).toEqual({ ok: true, value: -1 })
  })
})

/** What a hand's sensors read during one movement, after a short rest. */
function handMotion(movement: string, durationMs: number): SampleBlock {
  const hand = new SimulatedHand(3, { ideal: true })
  const count = Math.round((durationMs * 60) / 1000)
  const tMs = Float64Array.from({ length: count }, (_, i) => (i * 1000) / 60)
  const values = new Float32Array(count * AXES)
  tMs.forEach((t, i) => {
    if (i === 12) hand.perform(movement)
    const { ax, ay, az, gx, gy, gz } = hand.sampleAt(t)
    values.set([ax, ay, az, gx, gy, gz], i * AXES)
  })
  return { tMs, values }
}

/**
 * Share of samples whose three values are those of a played row, rounded to 0.1, with rows going
 * forwards. Says nothing of timing, which on a busy machine is that of the player.
 */
function shareFoundInOrder(
  samples: MotionSample[],
  { tMs, values }: SampleBlock,
  fields: (keyof MotionSample)[],
  firstAxis: number,
): number {
  let row = 0
  const found = samples.filter((sample) => {
    for (let ahead = row; ahead < tMs.length; ahead++) {
      const fits = fields.every((field, i) => {
        const value = values[ahead * AXES + firstAxis + i]!
        return Math.abs(sample[field] - value) < 0.06
      })
      if (!fits) continue
      row = ahead
      return true
    }
    return false
  })
  return found.length / samples.length
}

/**
 * Makes the page's motion events like those of iOS: permission only within a tap, nothing before
 * it, both accelerations inverted.
 */
const IOS_LIKE = `(() => {
  let granted = false
  DeviceMotionEvent.requestPermission = async () => {
    if (!navigator.userActivation.isActive) {
      throw new DOMException('Requesting device motion access requires a user gesture', 'NotAllowedError')
    }
    granted = true
    return 'granted'
  }
  for (const field of ['acceleration', 'accelerationIncludingGravity']) {
    const { get } = Object.getOwnPropertyDescriptor(DeviceMotionEvent.prototype, field)
    Object.defineProperty(DeviceMotionEvent.prototype, field, {
      get() {
        const value = get.call(this)
        const inverted = (axis) => (value[axis] === null ? null : -value[axis])
        return value && { x: inverted('x'), y: inverted('y'), z: inverted('z') }
      },
    })
  }
  window.addEventListener('devicemotion', (event) => {
    if (!granted) event.stopImmediatePropagation()
  }, true)
})()`
