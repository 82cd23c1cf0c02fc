// @vitest-environment happy-dom
import { render } from 'preact'
import { describe, expect, test } from 'vitest'
import { distanceTable } from '../../../src/shared/present/distances'
import { ConfusionMatrix, DistanceBars, Interval } from '../../../src/ui/charts'
import { cellRoute, cellsOf, pairRoute } from '../../../src/ui/proof/routes'
import { evaluation, event, smallModel } from '../../shared/present/present.fixture'

function draw(content: preact.ComponentChild): HTMLElement {
  const root = document.createElement('div')
  render(content, root)
  return root
}

describe('confusion matrix', () => {
  const measured = evaluation([
    [0, 0, 6],
    [0, null, 2],
    [1, 0, 3],
    [1, 1, 5],
  ])
  const root = draw(
    <ConfusionMatrix
      evaluation={measured}
      hrefOf={(cell) => cellRoute(measured, cell)}
      picture={() => null}
    />,
  )

  test('each cell with takes is a link whose address means just that cell', () => {
    const links = [...root.querySelectorAll('a')]
    expect(links.map((link) => link.textContent)).toEqual(['6', '2', '3', '5'])
    const meant = links.map((link) => {
      const [, , ...rest] = link.getAttribute('href')!.split('/').map(decodeURIComponent)
      return cellsOf(rest, measured)
    })
    expect(meant).toEqual([
      [{ truth: 0, answer: 0 }],
      [{ truth: 0, answer: null }],
      [{ truth: 1, answer: 0 }],
      [{ truth: 1, answer: 1 }],
    ])
  })

  test('a cell is spoken with both names, the count and the share of its row', () => {
    const label = root.querySelectorAll('a')[1].getAttribute('aria-label')!
    expect(label.replaceAll('\u202f', ' ')).toBe('Ring answered as none of these: 2 of 8, 25.0 %')
  })

  test('rows are as long as the gestures and the reject column', () => {
    const rows = [...root.querySelectorAll('tbody tr')]
    expect(rows.map((row) => row.querySelectorAll('td').length)).toEqual([4, 4, 4])
  })
})

describe('routes of takes', () => {
  const measured = evaluation([[0, 1, 1]])

  test('a pair means both directions', () => {
    const [, , ...rest] = pairRoute(measured, 0, 1).split('/')
    expect(cellsOf(rest, measured)).toEqual([
      { truth: 0, answer: 1 },
      { truth: 1, answer: 0 },
    ])
  })

  test('gestures that are not in the measurement mean nothing', () => {
    expect(cellsOf(['cell', 'ring', 'gone'], measured)).toBeNull()
    expect(cellsOf(['cell', 'gone', 'none'], measured)).toBeNull()
    expect(cellsOf(['elsewhere', 'ring', 'swing'], measured)).toBeNull()
  })
})

describe('distance bars', () => {
  test('thresholds and distances share one axis, and figures say which side was passed', () => {
    const table = distanceTable(event({ distance: 540 }), [540, 1310, 90_000], smallModel())!
    const bars = [...draw(<DistanceBars table={table} />).querySelectorAll('.distance')]
    const figures = bars.map((bar) => bar.querySelector('.distance-figures')!.textContent)
    expect(figures).toEqual(['540 ≤ 980', '1310 > 1100', '90\u202f000 > 700'])
    const style = (bar: Element, name: string) =>
      Number.parseFloat(
        bar.querySelector<HTMLElement>('.distance-bar')!.style.getPropertyValue(name),
      )
    expect(style(bars[0], '--distance')).toBeLessThan(style(bars[0], '--threshold'))
    expect(style(bars[1], '--distance')).toBeGreaterThan(style(bars[1], '--threshold'))
    expect(style(bars[2], '--distance')).toBe(100)
    expect(bars[2].querySelector('.distance-open')).not.toBeNull()
  })
})

describe('interval', () => {
  test('ends lie at their share of the axis and stay inside it', () => {
    const root = draw(<Interval value={0.5} low={0.25} high={3} max={1} label="x" />)
    const interval = root.querySelector<HTMLElement>('.interval')!
    expect(interval.style.getPropertyValue('--low')).toBe('25.00%')
    expect(interval.style.getPropertyValue('--high')).toBe('100.00%')
    expect(interval.classList.contains('interval-open')).toBe(true)
  })

  test('without data nothing is drawn', () => {
    const empty = Number.NaN
    const root = draw(<Interval value={empty} low={empty} high={empty} max={1} label="x" />)
    expect(root.querySelector('.interval-range')).toBeNull()
  })
})
