// biome-ignore-all lint/suspicious/noTemplateCurlyInString: the code under test holds templates.
import { expect, test } from 'vitest'
import { tightened } from '../../vite/tighten.ts'

const tight = (code: string): string => tightened(code, 'a.ts')

test('styles lose comments and layout, and keep every space that means something', () => {
  expect(
    tight(
      'css`\n  /* why */\n  .a > b:hover,\n  .c :first-child {\n    margin: 0 ${x} 1rem;\n  }\n  @media (max-width: 3rem) { a { b: calc(1px + 2px); } }\n`',
    ),
  ).toBe('css` .a>b:hover,.c :first-child{margin:0 ${x} 1rem}@media (max-width:3rem){a{b:calc(1px + 2px)}}`')
})

test('a figure below one loses its zero, and no other does', () => {
  expect(tight('css`a { b: 0.5rem -0.02em 10.5px 1.0; c: calc(0.3 * var(--x0.5)); d: #a0.5 }`')).toBe(
    'css`a{b:.5rem -.02em 10.5px 1.0;c:calc(.3 * var(--x0.5));d:#a0.5}`',
  )
})

test('markup loses indentation alone: what was apart stays apart', () => {
  expect(tight('html`\n    <p>one\n      two  <b>${three}</b>\n    </p>\n`')).toBe(
    'html`\n<p>one\ntwo  <b>${three}</b>\n</p>\n`',
  )
})

test('a style within markup is a style; other texts are left alone', () => {
  expect(tight('html`  <a>${css`a {\n b: c }`}</a>`')).toBe('html`  <a>${css`a{b:c}`}</a>`')
  expect(tight('const a = `css {\n  b }`')).toBe('const a = `css {\n  b }`')
})
