// @vitest-environment happy-dom
import { render } from 'preact'
import { expect, test } from 'vitest'
import { compareBoardAnswer } from '../../../src/shared/firmware/board-answer'
import { expectedSelfTestLog } from '../../../src/shared/firmware/self-test-log'
import { Verdict } from '../../../src/ui/prop/self-test-section'

const VECTORS = [
  { name: 'raise', why: 'Shows raise.', from: '', steps: [], log: 'init 0\nend 215\n' },
  { name: 'still', why: 'Nothing moves.', from: '', steps: [], log: 'init 0\nend 512\n' },
]
const LOG = expectedSelfTestLog('ab12', VECTORS)

function shown(text: string): HTMLElement {
  const root = document.createElement('div')
  render(<Verdict answer={compareBoardAnswer(text, 'ab12', VECTORS)} />, root)
  return root
}

test('a board that agrees is told so in one line', () => {
  const root = shown(LOG)
  expect(root.querySelector('[role=status]')?.textContent).toContain('All 2 vectors agree')
})

test('a first difference shows both lines side by side, the vector and the cause', () => {
  const root = shown(LOG.replace('end 512', 'end 509'))
  const lines = [...root.querySelectorAll('code')].map((code) => code.textContent)
  expect(lines).toEqual(['end 512', 'end 509'])
  expect(root.textContent).toContain('02-still, line 2: Nothing moves.')
  expect(root.textContent).toContain('3 of 512 samples')
})

test('vectors that were not run are named', () => {
  const root = shown(LOG.replace('vector 02-still\ninit 0\nend 512\n', ''))
  expect(root.textContent).toContain('Not run: 02-still')
})

test('another model is told with its hash', () => {
  expect(shown(LOG.replace('ab12', 'cd34')).textContent).toContain('Its hash: cd34')
})
