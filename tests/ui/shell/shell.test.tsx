// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { startRouter } from '../../../src/ui/common/router'
import { Shell } from '../../../src/ui/shell/shell'
import { openApp } from '../../state/app-bench'

let root: HTMLElement
let stop: () => void

beforeEach(() => {
  document.body.textContent = ''
  root = document.createElement('div')
  document.body.append(root)
})
afterEach(() => {
  render(null, root)
  stop()
})

async function openAt(hash: string): Promise<void> {
  history.replaceState(null, '', hash)
  stop = startRouter()
  const app = await openApp()
  await act(() => render(<Shell app={app} />, root))
}

const placeHere = () => root.querySelector('.bar [aria-current=page]')?.textContent

// 'constructor' is a name that every object knows.
test.each(['#/no-such-place', '#/no-such-place/further', '#/constructor'])(
  'the address %s, which nobody knows, gives way to that of the screen it shows',
  async (hash) => {
    await openAt(hash)
    await vi.waitFor(() => expect(location.hash).toBe('#/moves'), { timeout: 15_000 })
    expect(placeHere()).toBe('Moves')
    expect(root.querySelector('.shell-place')?.textContent).toContain('lantern parade demo')
  },
)

test('an address that leads somewhere stays, with what it says of its place', async () => {
  await openAt('#/gesture/none')
  await vi.waitFor(() => expect(root.querySelector('h1')?.textContent).toBe('Not here'), {
    timeout: 15_000,
  })
  expect(location.hash).toBe('#/gesture/none')
})
