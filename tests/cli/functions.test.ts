import { expect, test } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { evenfield, json } from './run.ts'

test('evenfield functions --json prints every function with its parameters, formula, source and examples', async () => {
  const ran = await evenfield('functions', '--json')
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

test('evenfield functions prints a line for each function under its subject', async () => {
  const lines = (await evenfield('functions')).out.split('\n')
  for (const { name } of FUNCTIONS) expect(lines.filter((line) => line.startsWith(`  ${name}(`))).toHaveLength(1)
  expect(lines).toContain('depth')
})

test('evenfield functions NAME prints one function in full, with the published values that check it', async () => {
  const { code, out } = await evenfield('functions', 'lens_to_sensor')
  expect(code).toBe(0)
  expect(out).toMatch(/^lens_to_sensor\(focal, magnification\)/)
  expect(out).toContain('How this was checked')
  // The Sinclair Handbook’s table for copying: 8 in lens, 5 times, 48 in.
  expect(out).toMatch(
    /published 48 in, computed 48 in, difference 0 in\n {4}lens_to_sensor\(8 in, 5\)\n {4}The Sinclair Handbook/,
  )
})

test('a function without a published value says so', async () => {
  expect((await evenfield('functions', 'file_name')).out).toContain('No published value was found for this function')
})

test('evenfield functions WORD lists the functions that have it', async () => {
  const { out } = await evenfield('functions', 'polariser')
  expect(out).toContain('  polariser_angle(')
  expect(out).toContain('  crossed_polariser_shift(')
  expect(out).not.toContain('  lens_to_sensor(')
})

test('evenfield functions WORD --json has the published values of each', async () => {
  const [record] = json(await evenfield('functions', 'brewster_angle', '--json')) as {
    published: { published: string; agrees: boolean; quoted: boolean }[]
  }[]
  expect(record?.published).toContainEqual(
    expect.objectContaining({ published: '56.7 °', agrees: true, quoted: false }),
  )
})

test('a word that no function has is said in one line, with status 2', async () => {
  const { code, err } = await evenfield('functions', 'xyzzy')
  expect(code).toBe(2)
  expect(err).toMatch(/No function was found for “xyzzy”.*\n$/)
})
