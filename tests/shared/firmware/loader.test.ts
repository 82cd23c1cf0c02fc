import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { runLoader } from '../../../src/build/target/cortex-m'
import { bundleOf } from '../../../src/build/target/demo-bundle'
import { Workshop } from '../../../src/build/target/workshop'
import type { FirmwareInput } from '../../../src/shared/firmware/bundle'
import { encodeModel } from '../../../src/shared/format/model-bytes'
import type { RecogniserModel } from '../../../src/shared/model/recogniser-model'
import { describeWithTools } from '../../support/tools'
import { firmwareOf } from './firmware-of'
import { checkedLine, loaderLines } from './loader-lines'
import { smallLibrary } from './small-library'
import { Unpacked } from './unpacked'

let input: FirmwareInput
let model: RecogniserModel

beforeAll(async () => {
  input = await firmwareOf(await smallLibrary())
  model = input.trained.model
}, 120_000)

/** The same model, which rejects whatever comes: its answers tell it from the first. */
function refusing(): Uint8Array {
  const gestures = model.gestures.map((gesture) => ({ ...gesture, threshold: 0 }))
  return encodeModel({ ...model, gestures })
}

/** One gesture with one template of four values: 92 bytes. */
function tiny(change: Partial<RecogniserModel> = {}): Uint8Array {
  const { gestures, normaliser } = model
  const templates = [Int8Array.of(0, 32, -32, 0)]
  return encodeModel({
    ...model,
    normaliser: { ...normaliser, length: 4, channelMask: 1 },
    band: 1,
    gestures: [{ ...gestures[0]!, templates, templateTakeIds: [''] }],
    ...change,
  })
}

/** Samples of a vector in which the first gesture is recognised, and its event line. */
function firstGesture(): { lines: string[]; event: string } {
  const vector = input.vectors.find(({ name }) => name.startsWith('gesture-'))!
  const lines = vector.steps.flatMap((step) => {
    if (!('samples' in step)) return []
    const { samples } = step
    return Array.from({ length: samples.length / 6 }, (_, i) =>
      samples.subarray(i * 6, i * 6 + 6).join(' '),
    )
  })
  return { lines, event: vector.log.split('\n').find((line) => line.startsWith('event'))! }
}

/** Event lines, which count samples from the start: what comes of them without those counts. */
function answers(said: readonly string[]): string[] {
  return said
    .filter((line) => line.startsWith('event'))
    .map((line) => line.split(' ').slice(3).join(' '))
}

describeWithTools('the loader of the bundle on this machine', ['make', 'gcc'], () => {
  let bundle: Unpacked
  beforeAll(() => {
    bundle = new Unpacked(input)
    const flags = '-O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all'
    const built = bundle.run(
      'make',
      'build/loader/prop-loader',
      'build/model_lines.txt',
      `CFLAGS=${flags}`,
    )
    expect(built.status).toBe(0)
  }, 120_000)
  afterAll(() => bundle.dispose())

  const run = (lines: readonly string[]): string[] => {
    writeFileSync(join(bundle.folder, 'lines.txt'), `${lines.join('\n')}\n`)
    const { output, status } = bundle.run('sh', '-c', 'build/loader/prop-loader < lines.txt')
    expect(status).toBe(0)
    return output.split('\n').map((line) => line.replace(/^>+/, ''))
  }

  test('takes the model.bin of the bundle by the lines that make writes', () => {
    const { output } = bundle.run('sh', '-c', 'build/loader/prop-loader < build/model_lines.txt')
    expect(output).toContain(`running ${input.trained.bytes.length}\n`)
    const written = bundle.run('cat', 'build/model_lines.txt').output
    expect(written.trimEnd().split('\n')).toEqual(loaderLines(input.trained.bytes))
  })

  test('a new model answers from the next sample on, and the one after it too', () => {
    const { lines, event } = firstGesture()
    const said = run([
      ...lines,
      ...loaderLines(refusing()),
      ...lines,
      ...loaderLines(input.trained.bytes),
      ...lines,
    ])
    expect(answers(said)).toEqual([
      answers([event])[0],
      expect.stringMatching(/^reject 0 far /),
      answers([event])[0],
    ])
  })

  test('a model with any bit turned is refused and the old one goes on', () => {
    const whole = tiny()
    const { lines, event } = firstGesture()
    const damaged = Array.from(whole).flatMap((_, at) =>
      Array.from({ length: 8 }, (_, bit) => {
        const bytes = whole.slice()
        bytes[at]! ^= 1 << bit
        return bytes
      }),
    )
    const said = run([...damaged.flatMap((bytes) => loaderLines(bytes)), ...lines])
    expect(said.filter((line) => line.startsWith('refused'))).toHaveLength(whole.length * 8)
    expect(said.filter((line) => line.startsWith('running'))).toEqual([])
    expect(answers(said)).toEqual(answers([event]))
  }, 60_000)

  test('a line with any character behind its word altered, or cut short, is asked for again', () => {
    const lines = loaderLines(tiny())
    const [head, first] = lines as [string, string]
    const altered = Array.from(first, (was, at) =>
      at < 3 ? '' : first.slice(0, at) + (was === '0' ? '1' : '0') + first.slice(at + 1),
    ).filter((line) => line !== '' && line !== first)
    const cut = Array.from({ length: first.length - 3 }, (_, at) => first.slice(0, at + 3))
    const said = run([head, ...altered, ...cut, ...lines.slice(1)])
    expect(said.filter((line) => line === 'again 0')).toHaveLength(altered.length + cut.length)
    expect(said).toContain(`running ${tiny().length}`)
  })

  test('lines lost, doubled or in another order are asked for again from where it stands', () => {
    const bytes = tiny()
    const [head, first, second, third, end] = loaderLines(bytes) as [
      string,
      string,
      string,
      string,
      string,
    ]
    const said = run([second, head, second, first, first, third, second, third, end])
    expect(said.filter((line) => /^(ok|again|running|refused)/.test(line))).toEqual([
      ...['again 0', 'ok 0', 'again 0', 'ok 32', 'again 32', 'again 32', 'ok 64'],
      ...[`ok ${bytes.length}`, `running ${bytes.length}`],
    ])
  })

  test('what is too large, too short, of another version or for another sensor is refused', () => {
    const { lines, event } = firstGesture()
    const bytes = tiny()
    const otherVersion = bytes.slice()
    otherVersion[4]! ^= 1
    const { board, segmenter } = model
    const answersTo = (sent: readonly string[]) =>
      run(sent).filter((line) => line.startsWith('refused'))
    expect(answersTo([checkedLine('model 99999')])).toEqual(['refused -32'])
    expect(answersTo([checkedLine('model 0')])).toEqual(['refused -32'])
    expect(answersTo([checkedLine('end')])).toEqual(['refused -33'])
    expect(answersTo(loaderLines(bytes, bytes.length + 1))).toEqual(['refused -33'])
    expect(answersTo(loaderLines(otherVersion))).toEqual(['refused -2'])
    const twice = tiny({ board: { ...board, accelNgPerLsb: board.accelNgPerLsb * 2 } })
    expect(answersTo(loaderLines(twice))).toEqual(['refused -4'])
    // More samples than this board has room for.
    const longer = tiny({ segmenter: { ...segmenter, maxLength: 1023 } })
    const said = run([...loaderLines(longer), ...lines])
    expect(said).toContain('refused -6')
    expect(answers(said)).toEqual(answers([event]))
  })
})

describeWithTools(
  'the loader on the emulated Cortex-M3, over its serial line',
  ['make', 'gcc', 'arm-none-eabi-gcc', 'qemu-system-arm'],
  () => {
    let shop: Workshop
    beforeAll(() => {
      shop = new Workshop(bundleOf(input))
    })
    afterAll(() => shop.dispose())

    test('a damaged model is refused, a whole one takes over while samples come', () => {
      const { lines, event } = firstGesture()
      const damaged = refusing()
      damaged[100]! ^= 4
      const said = runLoader(shop, [
        ...loaderLines(damaged),
        ...lines,
        ...loaderLines(refusing()),
        ...lines,
      ])
      expect(said).toContain('refused -7')
      expect(said).toContain(`running ${refusing().length}`)
      expect(answers(said)).toEqual([answers([event])[0], expect.stringMatching(/^reject 0 far /)])
    }, 120_000)
  },
)
