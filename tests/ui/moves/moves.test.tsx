// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import type { App } from '../../../src/state/app'
import { AppContext, path } from '../../../src/ui/common'
import { startRouter } from '../../../src/ui/common/router'
import { Moves } from '../../../src/ui/moves'
import { openApp } from '../../state/app-bench'

let root: HTMLElement
let app: App

beforeEach(async () => {
  document.body.textContent = ''
  root = document.createElement('div')
  document.body.append(root)
  history.replaceState(null, '', '#/moves')
  startRouter()
  app = await openApp()
  render(
    <AppContext.Provider value={app}>
      <Moves />
    </AppContext.Provider>,
    root,
  )
})

const button = (text: string) =>
  [...root.querySelectorAll('button')].find((one) => one.textContent?.includes(text))

async function tap(text: string): Promise<void> {
  await act(() => button(text)?.click())
}

async function type(text: string): Promise<void> {
  const input = root.querySelector('input[type=text]') as HTMLInputElement
  expect(document.activeElement).toBe(input)
  await act(() => {
    input.value = text
    input.dispatchEvent(new Event('input', { bubbles: true }))
  })
  await act(() => root.querySelector('form')?.requestSubmit())
}

describe('the empty start', () => {
  test('has one amber button, and says that the demo is generated', () => {
    expect(root.querySelectorAll('.button-amber')).toHaveLength(1)
    expect(root.querySelector('.button-amber')?.textContent).toBe('Load the lantern parade demo')
    expect(root.textContent).toContain('The demo is generated')
  })

  test('leaves whoever went on while the library was stored where they are', async () => {
    await tap('Start an own library')
    const made = vi.spyOn(app.library, 'create')
    await type('Bench lantern')
    location.hash = '#/prop'
    await vi.waitFor(() => expect(path.value).toEqual(['prop']))
    expect(await made.mock.results[0]?.value).toMatchObject({ ok: true })
    await vi.waitFor(() => expect(root.querySelector('form')).toBeNull())
    expect(location.hash).toBe('#/prop')
  })

  test('leads to an own library, a first gesture and its takes', async () => {
    history.replaceState(null, '', '#/')
    await tap('Start an own library')
    await type('Bench lantern')
    // Led there once all is stored, which is after the first sight of it.
    await vi.waitFor(() => expect(location.hash).toBe('#/moves'), { timeout: 15_000 })
    expect(root.querySelector('h1')?.textContent).toBe('Bench lantern')
    expect(root.textContent).toContain('Name the first movement')
    await tap('Add a gesture')
    await type('Ring')
    await vi.waitFor(() => expect(location.hash).toMatch(/^#\/gesture\//), { timeout: 15_000 })
    expect(app.library.current.value?.gestures.map(({ name }) => name)).toEqual(['Ring'])
    expect(root.textContent).toContain('Ring has no takes yet')
  })

  test('of a name that is taken keeps what was typed and says why', async () => {
    await app.library.create('Bench lantern')
    await app.library.addGesture('Ring')
    await vi.waitFor(() => expect(button('Add a gesture')).toBeDefined(), { timeout: 15_000 })
    await tap('Add a gesture')
    await type('ring')
    await vi.waitFor(
      () => expect(root.querySelector('[role=alert]')?.textContent).toContain('is there already'),
      { timeout: 15_000 },
    )
    expect(root.querySelector<HTMLInputElement>('input')?.value).toBe('ring')
    expect(path.value).toEqual(['moves'])
  })
})
