// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { describe, expect, test } from 'vitest'
import { NumberField } from '../../../src/ui/prop/number-field'

function field() {
  const given: number[] = []
  const root = document.createElement('div')
  document.body.append(root)
  render(
    <NumberField
      label="Clock"
      unit="MHz"
      value={48}
      min={1}
      max={100}
      onChange={(v) => given.push(v)}
    />,
    root,
  )
  const input = root.querySelector('input')!
  const type = async (text: string) => {
    await act(() => {
      input.value = text
      input.dispatchEvent(new Event('input', { bubbles: true }))
    })
  }
  return { root, input, given, type }
}

describe('NumberField', () => {
  test('a number in range is handed on, with comma or point', async () => {
    const { given, type } = field()
    await type('16')
    await type('16,5')
    expect(given).toEqual([16, 16.5])
  })

  test('what is no number in range is kept on screen, explained, and not handed on', async () => {
    const { root, input, given, type } = field()
    for (const wrong of ['', '0', '101', 'fast']) {
      await type(wrong)
      expect(input.value).toBe(wrong)
      expect(root.textContent).toContain('Enter a number from 1 to 100.')
    }
    expect(given).toEqual([])
  })
})
