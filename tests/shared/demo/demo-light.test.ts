import { expect, test } from 'vitest'
import { loadLightForNode } from '../../../src/build/load-core'
import { DEMO_ANSWERS, demoLight } from '../../../src/shared/demo/demo-light'
import { DEMO_MOVEMENTS } from '../../../src/shared/demo/movements'
import { isAnswer, isLightSettings } from '../../../src/shared/format/light-schema'
import { checkEffect } from '../../../src/shared/light/check-effect'
import { lightFindings } from '../../../src/shared/light/safety'

const gestures = DEMO_MOVEMENTS.map(({ id, name, note }) => ({
  id,
  name,
  note,
  answer: DEMO_ANSWERS[id]!,
}))

test('each movement of the parade has an answer that is sound', () => {
  for (const { answer } of gestures) {
    expect(isAnswer(answer)).toBe(true)
    expect(checkEffect(answer.light).ok).toBe(true)
  }
  expect(isLightSettings(demoLight())).toBe(true)
  expect(Object.keys(DEMO_ANSWERS).sort()).toEqual(gestures.map(({ id }) => id).sort())
})

test('nothing in the parade is over a limit: alone, in chains, or in quick turn', async () => {
  expect(lightFindings(await loadLightForNode(), { gestures, light: demoLight() })).toEqual([])
})
