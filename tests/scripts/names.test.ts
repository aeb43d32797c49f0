import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { NAMES_FILE, namesPage } from '../../scripts/names.mjs'
import { VOCABULARY } from '../../src/worksheet/compose/vocabulary.ts'

test('the page of published names is the list the program composes by', () => {
  expect(readFileSync(NAMES_FILE, 'utf8'), 'after a change of templates/parts/names.json: npm run names').toBe(
    namesPage(),
  )
})

test('it tells every name with its meaning and unit', () => {
  const page = namesPage()
  expect(VOCABULARY.size).toBeGreaterThan(40)
  for (const [name, { means, unit }] of VOCABULARY) {
    const row = page.split('\n').find((line) => line.startsWith(`| \`${name}\` |`)) ?? ''
    expect(row, name).toContain(means)
    if (unit) expect(row, name).toContain(`\`${unit}\``)
  }
})
