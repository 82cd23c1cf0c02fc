// @vitest-environment happy-dom
import { render } from 'preact'
import { expect, test } from 'vitest'
import { RibbonView } from '../../../src/ui/ribbon'

function draw(content: preact.ComponentChild): SVGElement {
  const root = document.createElement('div')
  render(content, root)
  return root.querySelector('svg')!
}

const path = {
  kind: 'path',
  takes: 3,
  points: [0, 0.5, 1].map((x) => ({ x, y: x * x, width: x, halo: 0.05 })),
  extentDeg: 80,
  extentCm: 40,
  durationMs: 900,
} as const

test('a path is drawn as halo, body and start dot, named only when asked', () => {
  const plain = draw(<RibbonView ribbon={path as never} size={48} />)
  const shapes = [...plain.children].map((child) => child.getAttribute('class'))
  expect(shapes).toEqual(['ribbon-halo', 'ribbon-body', 'ribbon-start'])
  expect(plain.getAttribute('aria-hidden')).toBe('true')
  const named = draw(<RibbonView ribbon={path as never} size={48} label="Ribbon of Ring" />)
  expect(named.getAttribute('aria-label')).toBe('Ribbon of Ring')
  expect(named.getAttribute('aria-hidden')).not.toBe('true')
})

test('a picture for a margin leaves the halo out', () => {
  const small = draw(<RibbonView ribbon={path as never} size={30} />)
  expect(small.querySelector('.ribbon-halo')).toBeNull()
  expect(small.querySelector('.ribbon-body')).not.toBeNull()
})

test('drawing along the path uncovers the body through a mask of its own', () => {
  const drawn = draw(<RibbonView ribbon={path as never} size={48} draw />)
  const mask = drawn.querySelector('mask')!
  expect(drawn.querySelector('.ribbon-body')!.getAttribute('mask')).toBe(`url(#${mask.id})`)
})

test('a still gesture has its tick at the angle of the tip', () => {
  const ends = (elevationDeg: number) => {
    const ribbon = { kind: 'static', takes: 2, elevationDeg } as const
    const d = draw(<RibbonView ribbon={ribbon} size={100} />)
      .querySelector('.ribbon-tick')!
      .getAttribute('d')!
    return d.split('L')[1].split(' ').map(Number)
  }
  expect(ends(0)[1]).toBeCloseTo(50)
  expect(ends(90)[0]).toBeCloseTo(50)
  expect(ends(90)[1]).toBeLessThan(50)
  expect(ends(-90)[1]).toBeGreaterThan(50)
})
