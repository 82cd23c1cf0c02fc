// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { describe, expect, test } from 'vitest'
import type { Trim } from '../../../src/shared/model/library'
import { Trimmer } from '../../../src/ui/moves/trimmer'

function trimmer(trim: Trim | null) {
  const given: (Trim | null)[] = []
  const samples = {
    tMs: Float64Array.from({ length: 101 }, (_, row) => row * 20),
    values: new Float32Array(606).fill(1),
  }
  const root = document.createElement('div')
  document.body.append(root)
  render(
    <Trimmer samples={samples} durationMs={2000} trim={trim} onTrim={(to) => given.push(to)} />,
    root,
  )
  const move = async (label: string, ms: number) => {
    const handle = root.querySelector<HTMLInputElement>(`input[aria-label="${label}"]`)!
    await act(() => {
      handle.value = String(ms)
      handle.dispatchEvent(new Event('input', { bubbles: true }))
    })
    await act(() => {
      handle.dispatchEvent(new Event('change', { bubbles: true }))
    })
  }
  return { root, given, move }
}

describe('the trimmer', () => {
  test('hands on the part between its handles and says how much of the take counts', async () => {
    const { root, given, move } = trimmer(null)
    expect(root.textContent).toContain('The whole take counts')
    await move('Start', 500)
    await move('End', 1500)
    expect(given).toEqual([
      { startMs: 500, endMs: 2000 },
      { startMs: 500, endMs: 1500 },
    ])
    expect(root.textContent).toContain('the rest stays stored')
  })

  test('never lets the handles cross', async () => {
    const { given, move } = trimmer({ startMs: 800, endMs: 1000 })
    await move('Start', 1900)
    await move('End', 0)
    for (const trim of given) expect(trim!.endMs - trim!.startMs).toBeGreaterThanOrEqual(100)
  })

  test('pulled out to both ends takes the trim away', async () => {
    const { given, move } = trimmer({ startMs: 0, endMs: 1000 })
    await move('End', 2000)
    expect(given).toEqual([null])
  })
})
