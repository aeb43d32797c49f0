import { expect, test } from 'vitest'
import { element, toSvgText } from '../../../src/drawings/canvas/tree.ts'

test('text and attributes are escaped in a saved file', () => {
  const text = toSvgText(
    element('svg', { class: 'a"b<c>&' }, element('title', {}, '<script>alert("x")</script> & more')),
  )
  expect(text).toContain('class="a&quot;b&lt;c&gt;&amp;"')
  expect(text).toContain('<title>&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; more</title>')
})

test('characters no XML file may hold are left out', () => {
  expect(toSvgText(element('text', {}, 'a\u0000b\u001bc\tf'))).toContain('>abc\tf<')
})

test('a saved file is self-contained', () => {
  const text = toSvgText(element('svg', { viewBox: '0 0 10 10' }, element('path', { d: 'M 0 0 L 1 1' })))
  expect(text).toMatch(/^<\?xml version="1.0" encoding="UTF-8"\?>\n<svg xmlns="http:\/\/www.w3.org\/2000\/svg" /)
  expect(text).toContain('<path d="M 0 0 L 1 1"/></svg>')
})

test('numbers are rounded to a thousandth, and never as minus nothing', () => {
  expect(element('path', { x: 1.23456, y: -0.00001 }).attributes).toEqual({ x: 1.235, y: 0 })
})
