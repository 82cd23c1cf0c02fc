import { beforeAll, describe, expect, it } from 'vitest'
import { loadLightForNode } from '../../../src/build/load-core'
import type { CoreEvent } from '../../../src/shared/core/core'
import { lightTrack } from '../../../src/shared/light/light-track'
import type { LightPlayer } from '../../../src/shared/light/player'
import { screenCss } from '../../../src/shared/light/screen-colour'
import type { Library } from '../../../src/shared/model/library'
import type { Replay } from '../../../src/shared/model/replay'
import { event, smallModel } from '../present/present.fixture'
import { tinyLibrary } from '../training/tiny-library'
import { effect, lit } from './examples'

const RED = screenCss([1, 0, 0])
const DECIDED = 112

let player: LightPlayer
beforeAll(async () => {
  player = await loadLightForNode()
})

/** Dark at rest; the model's first gesture answers with a second of full red, a rejection with none. */
function library(): Library {
  const { gestures, light } = lit([{ kind: 'steady', colour: [255, 0, 0] }], { minChangeMs: 0 })
  const dark = { light: effect({ kind: 'off' }), sound: [], vibration: [] }
  const [answering] = gestures
  return {
    ...tinyLibrary().library,
    gestures: [{ ...answering, id: smallModel().gestures[0].id }],
    light: { ...light, answers: { idle: dark, reject: dark, low: dark } },
  }
}

/** 100 samples a second, moving from 100 on, at rest again from 112 on. */
function replay(decision: Partial<CoreEvent>): Replay {
  const length = 300
  const phase = new Uint8Array(length)
  phase.fill(1, 100, DECIDED)
  return {
    rateHz: 100,
    recordedCount: length,
    counts: new Int16Array(length * 6),
    energy: new Uint32Array(length),
    phase,
    onThreshold: 1,
    offThreshold: 1,
    events: [event({ start: 96, end: 108, ...decision })],
    gestureDistances: [],
    queries: [],
  }
}

describe('the light over a replay', () => {
  it('answers from the sample of the decision on, for as long as the effect lasts', () => {
    const track = lightTrack(player, library(), smallModel(), replay({}))
    expect(track).toHaveLength(300)
    const rest = track[0]
    expect(new Set(track.slice(0, DECIDED))).toEqual(new Set([rest]))
    // One tick after it was asked for, and for a second: 100 samples.
    expect(new Set(track.slice(DECIDED + 2, DECIDED + 98))).toEqual(new Set([RED]))
    expect(track.at(-1)).toBe(rest)
  })

  it('answers a rejection with the answer of rejections', () => {
    const track = lightTrack(player, library(), smallModel(), replay({ kind: 'reject' }))
    expect(track).not.toContain(RED)
  })

  it('does not answer with the light of a gesture that the library has no more', () => {
    const track = lightTrack(player, library(), smallModel(), replay({ gesture: 2 }))
    expect(track).not.toContain(RED)
  })
})
