import { BENCH_WRAPS, type BoardBuild, OPTIMISE, SELF_TEST_BODY } from './build'
import { type ElfTools, type RecogniserSize, recogniserSize } from './elf'
import { readOutput, type SelfTestOutput } from './self-test-output'
import { probeFile, type Workshop } from './workshop'

interface CortexM {
  name: string
  cpu: string
  machine: string
  /** Instructions in a tick of SysTick, with an instruction taking 1 ns of the emulator's time. */
  instructionsPerTick: number
  /** Vectors come in by the serial port, not from flash. */
  serial: boolean
}

const TOOLS: ElfTools = {
  compiler: 'arm-none-eabi-gcc',
  size: 'arm-none-eabi-size',
  nm: 'arm-none-eabi-nm',
}

export const M0 = cortexM({
  name: 'm0',
  cpu: 'cortex-m0',
  machine: 'microbit',
  instructionsPerTick: 62.5,
  serial: false,
})

const M3_BOARD: CortexM = {
  name: 'm3',
  cpu: 'cortex-m3',
  machine: 'mps2-an385',
  instructionsPerTick: 40,
  serial: true,
}

export const M3 = cortexM(M3_BOARD)

function cortexM(board: CortexM): BoardBuild {
  return {
    name: board.name,
    tools: ['make', 'gcc', 'arm-none-eabi-gcc', 'qemu-system-arm'],
    workUnit: 'instructions',
    workPerTick: board.instructionsPerTick,
    run: (shop) => run(shop, board),
    sizes: (shop) => sizes(shop, board),
    bench: (shop) => bench(shop, board),
  }
}

function compileFlags({ cpu }: CortexM): string[] {
  return [
    ...[`-mcpu=${cpu}`, '-mthumb', OPTIMISE, '-std=gnu99', '-Wall', '-Wextra', '-Werror'],
    ...['-ffreestanding', '-ffunction-sections', '-fdata-sections'],
    ...['-Icore', '-Imodel', '-Iselftest', `-I${probeFile('')}`],
  ]
}

function link(shop: Workshop, board: CortexM, out: string, args: string[]): void {
  shop.run(TOOLS.compiler, [
    ...compileFlags(board),
    ...['-nostartfiles', '-nostdlib', '-Wl,--gc-sections', '-T', probeFile('cortex_m.ld')],
    ...[...shop.files('core', '.c'), 'model/model.c', probeFile('cortex_start.c')],
    ...[...args, '-lgcc', '-o', out],
  ])
}

function run(shop: Workshop, board: CortexM): SelfTestOutput {
  const elf = `${board.name}.elf`
  const ports = ['cortex_port.c', 'probe.c', 'probe_text.c'].map(probeFile)
  const wraps = ['-Wl,--wrap=mvw_push', '-Wl,--wrap=vector_end']
  const transport = board.serial
    ? ['-DSERIAL', 'selftest/board_serial.c']
    : ['selftest/board_packed.c', 'build/packed_vectors.c']
  shop.run('make', [board.serial ? 'serial' : 'packed'])
  link(shop, board, elf, [...wraps, ...SELF_TEST_BODY, ...ports, ...transport])
  const input = board.serial ? shop.text('build/serial_vectors.txt') : ''
  return readOutput(emulate(shop, board, elf, board.serial ? input : null))
}

/** What the bundle's loader on the emulated M3 answers to lines on its serial port. */
export function runLoader(shop: Workshop, lines: readonly string[]): string[] {
  const elf = 'm3-loader.elf'
  const loader = ['loader_main.c', 'model_loader.c', 'store_ram.c'].map((file) => `loader/${file}`)
  link(shop, M3_BOARD, elf, [
    ...['-DSERIAL', '-DLOADER', '-Iloader', ...loader, 'selftest/event_log.c'],
    ...['cortex_port.c'].map(probeFile),
  ])
  const said = emulate(shop, M3_BOARD, elf, [...lines, 'done', ''].join('\n'))
  return said.split('\n').map((line) => line.replace(/^>+/, ''))
}

/** @param input for the serial port, by which the output then comes; null to use semihosting */
function emulate(shop: Workshop, board: CortexM, elf: string, input: string | null): string {
  const arguments_ = [
    ...['-M', board.machine, '-display', 'none', '-monitor', 'none'],
    ...['-serial', input === null ? 'none' : 'stdio'],
    ...['-icount', 'shift=0,align=off,sleep=off'],
    ...['-semihosting-config', 'enable=on,target=native', '-kernel', elf],
  ]
  const { out, err } = shop.run('qemu-system-arm', arguments_, input ?? '')
  return input === null ? err : out
}

function bench(shop: Workshop, board: CortexM): string {
  const elf = `${board.name}-bench.elf`
  const sources = ['cortex_port.c', 'cost_bench.c', 'probe_text.c'].map(probeFile)
  link(shop, board, elf, [...BENCH_WRAPS, ...sources])
  return emulate(shop, board, elf, null)
}

function sizes(shop: Workshop, board: CortexM): RecogniserSize {
  const { name } = board
  const files = {
    ...{ whole: `${name}-whole.elf`, empty: `${name}-empty.elf` },
    ...{ teaching: `${name}-teaching.elf`, model: `${name}-model.o` },
  }
  link(shop, board, files.whole, [probeFile('flash_probe.c')])
  link(shop, board, files.empty, ['-DEMPTY', probeFile('flash_probe.c')])
  link(shop, board, files.teaching, ['-DTEACH', probeFile('flash_probe.c')])
  shop.run(TOOLS.compiler, [...compileFlags(board), '-c', 'model/model.c', '-o', files.model])
  return recogniserSize(shop, TOOLS, files)
}
