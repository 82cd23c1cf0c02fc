import { statSync } from 'node:fs'
import { join } from 'node:path'
import { BENCH_WRAPS, type BoardBuild, OPTIMISE, SELF_TEST_BODY } from './build'
import { type ElfTools, type RecogniserSize, recogniserSize } from './elf'
import { joinOutputs, readOutput, type SelfTestOutput } from './self-test-output'
import { probeFile, type Workshop } from './workshop'

const PART = 'atmega1284p'
const CLOCK_HZ = 16_000_000

const TOOLS: ElfTools = { compiler: 'avr-gcc', size: 'avr-size', nm: 'avr-nm' }

/** Text of vectors that packs to less than the 32,767 bytes an array may have. */
const MOST_TEXT_BYTES = 90_000

/** Model bytes that are taken lie in RAM: read with the tables in RAM only. */
const NEEDS_TABLES_IN_RAM = /-bytes-whole\.in$/

export const AVR: BoardBuild = {
  name: 'avr',
  tools: ['make', 'gcc', 'avr-gcc', 'simavr'],
  workUnit: 'cycles',
  workPerTick: 1,
  run: (shop) => joinOutputs(slices(shop).map((slice, index) => run(shop, slice, index))),
  sizes,
  bench,
}

interface Slice {
  vectors: string[]
  tablesInRam: boolean
}

/** Vectors in order, cut so that each part fits the flash. */
function slices(shop: Workshop): Slice[] {
  const found: Slice[] = []
  let bytes = 0
  for (const vector of shop.files('vectors', '.in')) {
    const tablesInRam = NEEDS_TABLES_IN_RAM.test(vector)
    const size = statSync(join(shop.folder, vector)).size
    const last = found.at(-1)
    if (last && last.tablesInRam === tablesInRam && bytes + size <= MOST_TEXT_BYTES) {
      last.vectors.push(vector)
      bytes += size
    } else {
      found.push({ vectors: [vector], tablesInRam })
      bytes = size
    }
  }
  return found
}

function compileFlags(): string[] {
  return [
    ...[`-mmcu=${PART}`, `-DF_CPU=${CLOCK_HZ}UL`, OPTIMISE, '-std=gnu99', '-Wall', '-Wextra'],
    ...['-Werror', '-ffunction-sections', '-fdata-sections'],
    ...['-Icore', '-Imodel', '-Iselftest', `-I${probeFile('')}`],
  ]
}

function link(shop: Workshop, out: string, args: string[]): void {
  const sources = [...shop.files('core', '.c'), 'model/model.c']
  const all = [...compileFlags(), '-Wl,--gc-sections', ...sources, ...args, '-o', out]
  shop.run(TOOLS.compiler, all)
}

function run(shop: Workshop, { vectors, tablesInRam }: Slice, index: number): SelfTestOutput {
  const elf = `avr-${index}.elf`
  shop.run('make', ['packed', `VECTORS=${vectors.join(' ')}`])
  link(shop, elf, [
    ...(tablesInRam ? ['-DMVW_TABLES_IN_RAM'] : []),
    ...['-Wl,--wrap=mvw_push', '-Wl,--wrap=vector_end'],
    ...[...SELF_TEST_BODY, 'selftest/board_packed.c'],
    ...['build/packed_vectors.c', ...['avr_port.c', 'probe.c', 'probe_text.c'].map(probeFile)],
  ])
  return readOutput(emulate(shop, elf))
}

function emulate(shop: Workshop, elf: string): string {
  const { out, err } = shop.run('simavr', ['-m', PART, '-f', String(CLOCK_HZ), elf])
  return plain(out + err)
}

function bench(shop: Workshop): string {
  const sources = ['avr_port.c', 'cost_bench.c', 'probe_text.c'].map(probeFile)
  link(shop, 'avr-bench.elf', [...BENCH_WRAPS, ...sources])
  return emulate(shop, 'avr-bench.elf')
}

/** simavr colours each line of the serial port and ends it with a dot; its own lines have none. */
function plain(printed: string): string {
  const colour = String.fromCharCode(27)
  return printed
    .split('\n')
    .flatMap((line) => {
      const text = line.replaceAll(new RegExp(`${colour}\\[\\d+m`, 'g'), '')
      return text.endsWith('.') ? [text.slice(0, -1)] : []
    })
    .join('\n')
}

function sizes(shop: Workshop): RecogniserSize {
  const files = {
    ...{ whole: 'avr-whole.elf', empty: 'avr-empty.elf' },
    ...{ teaching: 'avr-teaching.elf', model: 'avr-model.o' },
  }
  link(shop, files.whole, [probeFile('flash_probe.c')])
  link(shop, files.empty, ['-DEMPTY', probeFile('flash_probe.c')])
  link(shop, files.teaching, ['-DTEACH', probeFile('flash_probe.c')])
  shop.run(TOOLS.compiler, [...compileFlags(), '-c', 'model/model.c', '-o', files.model])
  return recogniserSize(shop, TOOLS, files)
}
