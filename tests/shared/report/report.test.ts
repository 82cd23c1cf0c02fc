// @vitest-environment happy-dom
import { describe, expect, test } from 'vitest'
import { plotFile } from '../../../src/shared/report/plots/plot'
import { reportFile, reportPlots } from '../../../src/shared/report/report'
import { tinyLibrary } from '../training/tiny-library'
import { bareReport, EVIL, evilReport } from './report.fixture'

function parse(text: string, type: DOMParserSupportedType = 'text/html'): Document {
  return new DOMParser().parseFromString(text, type)
}

/** Words that would run or fetch something, whoever shows the page. */
const ACTS = 'script, iframe, img, object, embed, link, base, form, a, audio, video, foreignObject'

describe('a report of a library whose names are markup', () => {
  const text = reportFile(evilReport())
  const page = parse(text)

  test('has no element that runs or fetches, and no attribute that listens', () => {
    expect(page.querySelectorAll(ACTS).length).toBe(0)
    const attributes = [...page.querySelectorAll('*')].flatMap((element) => [...element.attributes])
    const acting = attributes.filter(
      ({ name, value }) =>
        /^(on|src|href|xlink:href|action|style$)/i.test(name) || /url\(/i.test(value),
    )
    expect(acting.map(({ name }) => name)).toEqual([])
  })

  test('shows the names as they were typed, with what turns text round made visible', () => {
    expect(page.title).toBe(`${EVIL.library}: recognition report`)
    expect(page.querySelector('h1')?.textContent).toBe(EVIL.library)
    const heads = [...page.querySelectorAll('th')].map(({ textContent }) => textContent)
    expect(heads).toContain(EVIL.gesture)
    expect(heads).toContain(EVIL.turned.replace('\u202e', '[U+202E]'))
    expect(heads).toContain(EVIL.tester)
    expect(text).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/)
  })

  test('fetches nothing: its policy allows no source, and no address is in it but that of SVG', () => {
    const policy = page.querySelector('meta[http-equiv="Content-Security-Policy"]')
    expect(policy?.getAttribute('content')).toContain("default-src 'none'")
    expect(text.match(/https?:|url\(|@import|\/\/(?!elsewhere)/g) ?? []).toEqual([])
  })

  test('its plots are sound XML of their own, and run nothing either', () => {
    const plots = reportPlots(evilReport())
    expect(plots.map(({ key }) => key)).toEqual([
      'confusion',
      'recall-precision',
      'trade-off',
      'false-activations',
    ])
    for (const plot of plots) {
      const drawn = parse(plotFile(plot), 'image/svg+xml')
      expect(drawn.querySelector('parsererror')).toBeNull()
      expect(drawn.documentElement.getAttribute('xmlns')).toBe('http://www.w3.org/2000/svg')
      expect(drawn.querySelectorAll(ACTS).length).toBe(0)
    }
  })

  test('says that it is of a library before the last change', () => {
    expect(page.body.textContent).toContain('these figures are of the state before')
  })
})

describe('a report of what was not measured', () => {
  const page = parse(reportFile(bareReport(tinyLibrary())))
  const text = page.body.textContent ?? ''

  test('says so first, one sentence for each', () => {
    const list = [...(page.querySelector('header ul')?.children ?? [])].map(
      (one) => one.textContent,
    )
    expect(list.join('\n')).toContain('Recognition was not measured')
    expect(list.join('\n')).toContain('Grip tolerance was not measured')
    expect(list.join('\n')).toContain('There is no model: Too few takes to train on.')
    expect(list.join('\n')).toContain('No hand moved: every recording is generated or simulated.')
    expect(page.querySelector('.answers')?.textContent).toContain('not measured')
  })

  test('has no percentage anywhere that a reader could take for a result', () => {
    const withoutSettings = text.replace(/± \d+ % of the segment|95 % interval/g, '')
    expect(withoutSettings.match(/\d %/g) ?? []).toEqual([])
  })
})

test('every table has a caption and as many cells in each row as heads', () => {
  for (const data of [evilReport(), bareReport(tinyLibrary())]) {
    const tables = [...parse(reportFile(data)).querySelectorAll('table')]
    expect(tables.length).toBeGreaterThan(2)
    for (const table of tables) {
      expect(table.querySelector('caption')?.textContent).toBeTruthy()
      const heads = table.querySelectorAll('thead th, thead td').length
      for (const row of table.querySelectorAll('tbody tr')) expect(row.children.length).toBe(heads)
    }
  }
})
