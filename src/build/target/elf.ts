import type { Workshop } from './workshop'

/** The binutils of a cross compiler. */
export interface ElfTools {
  compiler: string
  size: string
  nm: string
}

/** What the recogniser takes in the least firmware that has it. */
export interface RecogniserSize {
  /** Code in flash, with what it pulls from the compiler's library. */
  codeBytes: number
  /** Constant tables of the model in flash. */
  tableBytes: number
  /** Static RAM: state and buffers. */
  staticBytes: number
  /** What teaching adds, with one slot and three movements. */
  teachCodeBytes: number
  teachStateBytes: number
}

/**
 * @param whole program with the recogniser in it
 * @param empty the same without
 * @param teaching program with the recogniser and teaching in it
 * @param model object file of the model, whose symbols are the tables
 */
export function recogniserSize(
  shop: Workshop,
  tools: ElfTools,
  files: { whole: string; empty: string; teaching: string; model: string },
): RecogniserSize {
  const whole = sections(shop, tools, files.whole)
  const empty = sections(shop, tools, files.empty)
  const teaching = sections(shop, tools, files.teaching)
  const inModel = new Set(symbols(shop, tools, files.model).map(({ name }) => name))
  const tableBytes = symbols(shop, tools, files.whole)
    .filter(({ name }) => inModel.has(name))
    .reduce((sum, { bytes }) => sum + bytes, 0)
  return {
    codeBytes: whole.flash - empty.flash - tableBytes,
    tableBytes,
    staticBytes: whole.ram - empty.ram,
    teachCodeBytes: teaching.flash - whole.flash,
    teachStateBytes: teaching.ram - whole.ram,
  }
}

/** Initialised data counts twice: as an image in flash and in RAM. */
const IN_FLASH = ['.text', '.rodata', '.data']
const IN_RAM = ['.data', '.bss', '.noinit']

function sections(shop: Workshop, tools: ElfTools, file: string): { flash: number; ram: number } {
  const rows = [...shop.run(tools.size, ['-A', file]).out.matchAll(/^(\.\S+)\s+(\d+)\s/gm)]
  const sum = (names: string[]) =>
    rows
      .filter(([, name = '']) => names.includes(name))
      .reduce((total, [, , bytes]) => total + Number(bytes), 0)
  return { flash: sum(IN_FLASH), ram: sum(IN_RAM) }
}

function symbols(shop: Workshop, tools: ElfTools, file: string): { name: string; bytes: number }[] {
  const { out } = shop.run(tools.nm, ['-S', '--defined-only', file])
  return [...out.matchAll(/^[0-9a-f]+ ([0-9a-f]+) \S (\S+)$/gm)].map(
    ([, size = '0', name = '']) => ({
      name,
      bytes: Number.parseInt(size, 16),
    }),
  )
}
