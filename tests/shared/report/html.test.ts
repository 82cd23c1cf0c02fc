import { describe, expect, test } from 'vitest'
import { escapeText, html, name } from '../../../src/shared/report/html'

describe('text that is put into HTML', () => {
  test('keeps no markup, in text and in attributes', () => {
    const evil = `"><script>alert(1)</script><b onclick='x'>&amp;`
    const made = html`<p title="${evil}">${evil}</p>`.text
    expect(made.match(/<[^>]*>/g)).toEqual([
      '<p title="&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;&lt;b onclick=&#39;x&#39;&gt;&amp;amp;">',
      '</p>',
    ])
  })

  test('shows controls that turn text round by their number, UAX #9, and teletype controls', () => {
    expect(escapeText('a\u202egnp.exe\u2066\u061c\u0007')).toBe(
      'a[U+202E]gnp.exe[U+2066][U+061C][U+0007]',
    )
    expect(escapeText('two\nlines\tand more')).toBe('two lines and more')
  })

  test('keeps scripts of any direction apart from what stands beside them', () => {
    expect(name('تحية').text).toBe('<bdi>تحية</bdi>')
    expect(name('Élan 🏮').text).toBe('<bdi>Élan 🏮</bdi>')
  })

  test('puts in pieces that are HTML already as they are, and nothing for null and false', () => {
    expect(
      html`<ul>${['a<', 'b'].map((one) => html`<li>${one}</li>`)}${null}${false}</ul>`.text,
    ).toBe('<ul><li>a&lt;</li><li>b</li></ul>')
    expect(html`${0}`.text).toBe('0')
  })
})
