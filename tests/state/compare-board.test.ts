import { strFromU8, unzipSync } from 'fflate'
import { expect, test } from 'vitest'
import { openApp } from './app-bench'

test('the log that exported firmware must give agrees; one with a figure altered does not', async () => {
  const app = await openApp()
  expect(await app.compareBoard('movewright 1')).toMatchObject({ code: 'board/no-library' })
  await app.library.addDemo()
  const bundle = await app.exportFirmware()
  if (!bundle.ok) throw new Error(bundle.message)
  const files = Object.entries(unzipSync(bundle.value.bytes))
  const [, header] = files.find(([path]) => path === 'model/model.h') ?? []
  const [, hash] = strFromU8(header!).match(/MODEL_SHA256 "(\w+)"/) ?? []
  const runs = files.flatMap(([path, bytes]) => {
    const [, name] = path.match(/^vectors\/(.+)\.log$/) ?? []
    return name === undefined ? [] : [`vector ${name}\n${strFromU8(bytes)}`]
  })
  const log = `movewright 1\nmodel ${hash}\n${runs.join('')}done\n`
  expect(await app.compareBoard(log)).toMatchObject({
    ok: true,
    value: { kind: 'agrees', agreed: runs.length },
  })
  expect(await app.compareBoard(log.replace(/end (\d+)/, 'end 1$1'))).toMatchObject({
    ok: true,
    value: { kind: 'differs', agreed: runs.length - 1 },
  })
})
