import { expect, test } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { evenfield, json } from './run.ts'

test('evenfield functions --json prints every function with its parameters, formula, source and examples', () => {
  const ran = evenfield('functions', '--json')
  expect(ran.code).toBe(0)
  const printed = json(ran) as { name: string; parameters: { name: string; dimension: string }[] }[]
  expect(printed.map(({ name }) => name)).toEqual(FUNCTIONS.map(({ name }) => name))
  expect(printed.find(({ name }) => name === 'depth_of_field')).toMatchObject({
    subject: 'depth',
    parameters: expect.arrayContaining([expect.objectContaining({ name: 'blur', dimension: 'length', default: null })]),
    formula: expect.stringMatching(/./),
    source: expect.stringMatching(/./),
    examples: expect.arrayContaining([expect.objectContaining({ formula: expect.stringMatching(/depth_of_field/) })]),
  })
})

test('evenfield functions prints a line for each function under its subject', () => {
  const lines = evenfield('functions').out.split('\n')
  for (const { name } of FUNCTIONS) expect(lines.filter((line) => line.startsWith(`  ${name}(`))).toHaveLength(1)
  expect(lines).toContain('depth')
})
