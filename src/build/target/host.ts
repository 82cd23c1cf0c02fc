import type { Tool } from '../tools'
import type { Build } from './build'
import { readOutput, type SelfTestOutput } from './self-test-output'
import type { Workshop } from './workshop'

const CHECKED = '-O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all'

/** The bundle's own `make test`: on this machine, or for another processor run by an emulator. */
function made(name: string, tools: Tool[], settings: Record<string, string>): Build {
  return { name, tools: ['make', ...tools], run: (shop) => make(shop, name, settings) }
}

function make(shop: Workshop, name: string, settings: Record<string, string>): SelfTestOutput {
  const run = settings.RUN
  const out = `out-${name}`
  const assigned = Object.entries({ ...settings, OUT: out }).map(
    ([key, value]) => `${key}=${value}`,
  )
  shop.run('make', [...assigned, `${out}/run-vectors`])
  const vectors = shop.files('vectors', '.in')
  const command = [...(run === undefined ? [] : [run]), `${out}/run-vectors`, ...vectors]
  return readOutput(shop.run(command[0] ?? '', command.slice(1)).out)
}

export const HOST_BUILDS: Build[] = [
  made('gcc', ['gcc'], { CC: 'gcc' }),
  made('gcc-checked', ['gcc'], { CC: 'gcc', CFLAGS: CHECKED }),
  made('clang', ['clang'], { CC: 'clang' }),
  made('clang-checked', ['clang'], { CC: 'clang', CFLAGS: CHECKED }),
  made('s390x', ['s390x-linux-gnu-gcc', 'qemu-s390x'], {
    CC: 's390x-linux-gnu-gcc',
    CFLAGS: '-O2 -static',
    RUN: 'qemu-s390x',
  }),
]
