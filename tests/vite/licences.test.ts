import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { licenceTexts } from '../../vite/licences.ts'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))

test('every library and font the site contains is named with its licence', () => {
  const text = licenceTexts(ROOT)
  const { dependencies } = JSON.parse(readFileSync(`${ROOT}/package.json`, 'utf8'))
  const names = Object.entries<string>(dependencies).map(([name, version]) => /^npm:(.+)@/.exec(version)?.[1] ?? name)
  for (const name of names) expect(text).toMatch(new RegExp(`^(${name}|expr-eval) \\d+\\.`, 'm'))
  // Libraries of libraries too, and the fonts' own licence.
  expect(text).toMatch(/^workbox-core \d/m)
  expect(text).toMatch(/SIL OPEN FONT LICENSE/i)
  expect(text).toMatch(/Permission is hereby granted, free of charge/)
})
