// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { takesKey } from '../../../src/ui/replay/use-play-head'

function pressed(html: string, key: string): boolean {
  document.body.innerHTML = html
  const event = new KeyboardEvent('keydown', { key })
  Object.defineProperty(event, 'target', { value: document.body.firstElementChild })
  return takesKey(event)
}

test('a focused control keeps the keys it has a use for, and leaves the others to the replay', () => {
  expect(pressed('<button>Play</button>', ' ')).toBe(true)
  expect(pressed('<button>Play</button>', 'ArrowRight')).toBe(false)
  expect(pressed('<input type="range">', 'ArrowRight')).toBe(true)
  expect(pressed('<input type="range">', ' ')).toBe(false)
  expect(pressed('<input type="radio">', 'ArrowRight')).toBe(true)
  expect(pressed('<select></select>', 'l')).toBe(true)
  expect(pressed('<div></div>', ' ')).toBe(false)
})
