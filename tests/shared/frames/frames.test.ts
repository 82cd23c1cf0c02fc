import fc from 'fast-check'
import { create } from 'qrcode'
import { describe, expect, it } from 'vitest'
import { frameLength, readFrame, writeFrame } from '../../../src/shared/frames/frame'
import { mixOf } from '../../../src/shared/frames/mix'
import { DENSITIES, FRAME_MS, runMs } from '../../../src/shared/frames/pace'
import { FrameReceiver } from '../../../src/shared/frames/receiver'
import { createSender, type FrameSender } from '../../../src/shared/frames/sender'
import { createRandom } from '../../../src/shared/statistics/random'
import { shuffled } from '../../../src/shared/statistics/shuffled'

function senderOf(content: Uint8Array, blockBytes: number): FrameSender {
  const sender = createSender(content, blockBytes)
  if (!sender.ok) throw new Error(sender.message)
  return sender.value
}

function randomBytes(count: number, seed: number): Uint8Array {
  const random = createRandom(seed)
  return Uint8Array.from({ length: count }, () => random.integer(256))
}

/** Frames seen until the content is whole. */
function framesNeeded(sender: FrameSender, receiver: FrameReceiver, numbers: number[]): number {
  const at = numbers.findIndex((number) => receiver.see(sender.text(number)) === 'complete')
  if (at < 0) throw new Error('The run never became whole.')
  return at + 1
}

describe('a run of frames', () => {
  it('brings any content over whatever is lost, in any order, with repeats', () => {
    fc.assert(
      fc.property(
        fc.uint8Array({ minLength: 1, maxLength: 3000 }),
        fc.integer({ min: 1, max: 300 }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.integer(),
        (content, blockBytes, loss, seed) => {
          if (content.length / blockBytes > 200) return
          const sender = senderOf(content, blockBytes)
          const random = createRandom(seed)
          const receiver = new FrameReceiver()
          const kept: number[] = []
          for (let number = 0; kept.length < sender.blocks + 40; number++) {
            if (random.next() >= loss) kept.push(number)
          }
          const seen = shuffled([...kept, ...kept.slice(0, 20)], random)
          framesNeeded(sender, receiver, seen)
          expect(receiver.content()).toEqual(content)
        },
      ),
      { numRuns: 300 },
    )
  })

  it('needs no frame more than blocks when none is lost', () => {
    const sender = senderOf(randomBytes(20_000, 1), 240)
    const receiver = new FrameReceiver()
    const numbers = Array.from({ length: sender.blocks }, (_, number) => number)
    expect(framesNeeded(sender, receiver, numbers)).toBe(sender.blocks)
  })

  it('needs E frames too many with a chance below 2^-E (MacKay 2005, section 2.1)', () => {
    const blocks = 40
    const sender = senderOf(randomBytes(blocks * 8, 2), 8)
    const trials = 400
    const excess = Array.from({ length: trials }, (_, trial) => {
      // Mixes alone, as for a camera that came when all single blocks were through.
      const numbers = Array.from({ length: blocks + 30 }, (_, k) => blocks + 1000 * trial + k)
      return framesNeeded(sender, new FrameReceiver(), numbers) - blocks
    })
    for (const extra of [1, 2, 3, 5]) {
      const bound = 2 ** -extra
      const over = excess.filter((one) => one > extra).length / trials
      expect(over).toBeLessThan(bound + 4 * Math.sqrt((bound * (1 - bound)) / trials))
    }
  })

  it('takes a frame seen twice for what it is', () => {
    const sender = senderOf(randomBytes(500, 3), 100)
    const receiver = new FrameReceiver()
    expect(receiver.see(sender.text(2))).toBe('new')
    expect(receiver.see(sender.text(2))).toBe('repeat')
    expect(receiver.progress).toEqual({ found: 1, blocks: 5 })
  })

  it('keeps what it has of one run while another shows', () => {
    const [one, other] = [senderOf(randomBytes(300, 4), 100), senderOf(randomBytes(200, 5), 100)]
    const receiver = new FrameReceiver()
    receiver.see(one.text(0))
    receiver.see(other.text(0))
    expect(receiver.progress).toEqual({ found: 1, blocks: 2 })
    receiver.see(one.text(1))
    expect(receiver.see(one.text(2))).toBe('complete')
    expect(receiver.content()).toEqual(randomBytes(300, 4))
  })

  it('drops a run whose blocks do not give what was sent, and starts it anew', () => {
    const frame = readFrame(senderOf(randomBytes(50, 6), 100).text(0))!
    const receiver = new FrameReceiver()
    const forged = writeFrame({ ...frame, data: frame.data.map((byte) => byte ^ 1) })
    expect(receiver.see(forged)).toBe('unsound')
    expect(receiver.see(writeFrame(frame))).toBe('complete')
  })
})

describe('one frame', () => {
  it('is refused when any character of it is another', () => {
    const text = senderOf(randomBytes(40, 7), 20).text(1)
    const random = createRandom(8)
    for (let at = 0; at < text.length; at++) {
      const other = 'AB0:'[random.integer(4)]!
      if (other === text[at]) continue
      expect(readFrame(text.slice(0, at) + other + text.slice(at + 1))).toBe(null)
    }
    expect(readFrame(text.slice(0, -3))).toBe(null)
    expect(new FrameReceiver().see('https://example.org/')).toBe('foreign')
  })

  it('is refused when it claims more than anybody would show', () => {
    const frame = readFrame(senderOf(randomBytes(40, 9), 20).text(0))!
    for (const claim of [
      { contentBytes: 2 ** 31 },
      { contentBytes: 0 },
      { blockBytes: 1 },
      { contentBytes: 20 * 1025 },
    ]) {
      expect(readFrame(writeFrame({ ...frame, ...claim }))).toBe(null)
    }
  })

  it('mixes about half of the blocks, and never none', () => {
    for (const blocks of [1, 2, 31, 32, 33, 100]) {
      for (let number = 0; number < 200; number++) {
        const mix = mixOf(number, blocks)
        const bits = [...mix].reduce((sum, word) => sum + ones(word), 0)
        expect(bits).toBeGreaterThan(0)
        expect(bits).toBeLessThanOrEqual(blocks)
        if (number < blocks) expect(bits).toBe(1)
      }
    }
  })

  it('fills the version of QR code that its density is named for', () => {
    const versions = DENSITIES.map(({ blockBytes }) => {
      const text = senderOf(randomBytes(5000, 10), blockBytes).text(0)
      expect(text).toHaveLength(frameLength(blockBytes))
      return create(text, { errorCorrectionLevel: 'L' }).version
    })
    expect(versions).toEqual([25, 17, 10])
  })
})

it('refuses what is empty or too much to show, with a sentence', () => {
  expect(createSender(new Uint8Array(0), 100)).toMatchObject({ ok: false, code: 'frames/empty' })
  expect(createSender(new Uint8Array(2 ** 21), 1200)).toMatchObject({ code: 'frames/too-large' })
  expect(createSender(new Uint8Array(200_000), 100)).toMatchObject({ code: 'frames/too-large' })
})

it('changes codes three times a second at most', () => {
  expect(1000 / FRAME_MS).toBeLessThanOrEqual(3)
  expect(runMs(DENSITIES[0]!.blockBytes * 10, DENSITIES[0]!)).toBe(10 * FRAME_MS)
})

function ones(word: number): number {
  return word.toString(2).replaceAll('0', '').length
}
