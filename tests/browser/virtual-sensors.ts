import type { CDPSession } from 'playwright-core'
import { AXES, type SampleBlock, STANDARD_GRAVITY_MPS2 } from '../../src/shared/model/sample'

export type SensorType = 'accelerometer' | 'gyroscope'
export type SixValues = readonly [number, number, number, number, number, number]

/** Flat on a table, screen up. */
export const FLAT: SixValues = [0, 0, STANDARD_GRAVITY_MPS2, 0, 0, 0]

const TICK_MS = 1000 / 60

/**
 * The browser's own virtual sensors: what is put in comes out as trusted `devicemotion` events at
 * 60 Hz, rounded to 0.1. They must be enabled before the page listens, and last as long as the
 * DevTools session.
 */
export class VirtualSensors {
  constructor(
    readonly session: Pick<CDPSession, 'send'>,
    readonly types: readonly SensorType[] = ['accelerometer', 'gyroscope'],
  ) {}

  async enable(): Promise<void> {
    for (const type of this.types) {
      await this.session.send('Emulation.setSensorOverrideEnabled', { type, enabled: true })
    }
    await this.show(FLAT)
  }

  /** From now on events have null fields. */
  async disable(): Promise<void> {
    for (const type of this.types) {
      await this.session.send('Emulation.setSensorOverrideEnabled', { type, enabled: false })
    }
  }

  /** Holds one reading: m/s² and deg/s in sample order. */
  async show([ax, ay, az, gx, gy, gz]: SixValues): Promise<void> {
    const perType = {
      accelerometer: { x: ax, y: ay, z: az },
      gyroscope: { x: radians(gx), y: radians(gy), z: radians(gz) },
    }
    await Promise.all(
      this.types.map((type) =>
        this.session.send('Emulation.setSensorOverrideReadings', {
          type,
          reading: { xyz: perType[type] },
        }),
      ),
    )
  }

  /**
   * Plays samples in real time, on an absolute schedule of 60 a second: what is late is left out,
   * as a phone would. Resolves after the last one.
   */
  async play({ tMs, values }: SampleBlock): Promise<void> {
    const startMs = performance.now()
    const lengthMs = (tMs.at(-1) ?? 0) - (tMs[0] ?? 0)
    let row = 0
    for (let tick = 0; ; tick++) {
      const waitMs = startMs + tick * TICK_MS - performance.now()
      if (waitMs < -TICK_MS) continue
      if (waitMs > 0) await new Promise((resolve) => setTimeout(resolve, waitMs))
      const atMs = tick * TICK_MS
      if (atMs > lengthMs) return
      while (row + 1 < tMs.length && tMs[row + 1]! - tMs[0]! <= atMs + TICK_MS / 2) row++
      await this.show(Array.from(values.subarray(row * AXES, row * AXES + AXES)) as never)
    }
  }
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180
}
