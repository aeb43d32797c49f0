import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { version } from '../../package.json'
import { VERBS } from '../../src/cli/help.ts'
import { evenfield, inTerminal, json, worksheet } from './run.ts'

test('the help of all commands fits on one screen, and names each', async () => {
  const ran = await evenfield('--help')
  expect(ran.code).toBe(0)
  expect(ran.out.trimEnd().split('\n').length).toBeLessThanOrEqual(24)
  for (const name of Object.keys(VERBS)) expect(ran.out).toContain(`  ${name} `)
  expect((await evenfield('help')).out).toBe(ran.out)
})

test('each command explains itself, wherever --help is', async () => {
  const { out, code } = await evenfield('compute', '--help')
  expect(code).toBe(0)
  expect(out).toMatch(/^evenfield compute FILE\.json/)
  expect(out).toContain("--set 'name=text'")
  expect((await evenfield('formula', '2 + 3', '--help')).out).toMatch(/^evenfield formula/)
  expect((await evenfield('help', 'run')).out).toMatch(/^evenfield run/)
})

test('the version is that of the package', async () => {
  expect((await evenfield('--version')).out).toBe(`evenfield ${version}\n`)
})

test('what is wrong with a command is one line on the error stream', async () => {
  for (const args of [[], ['reckon'], ['compute', '--odd'], ['functions', '--odd']]) {
    const ran = await evenfield(...args)
    expect(ran.code).toBe(2)
    expect(ran.out).toBe('')
    expect(ran.err.trimEnd().split('\n')).toHaveLength(1)
  }
})

test('a worksheet is read from standard input', async () => {
  const path = worksheet('piped.json', [{ kind: 'result', id: 'r', name: 'r', formula: '2 mm + 3 mm' }])
  const ran = inTerminal(readFileSync(path, 'utf8'), 'compute', '-', '--json')
  expect(json(ran)).toMatchObject({ cells: { r: { shown: '5 mm' } } })
})

test('functions are found by words of the trade', async () => {
  const ran = await evenfield('functions', 'circle', 'of', 'confusion')
  expect(ran.code).toBe(0)
  expect(ran.out).toContain('\n  blur_from_pixels(')
  const found = json(await evenfield('functions', 'polarizer', '--json')) as { name: string }[]
  expect(found.map(({ name }) => name)).toContain('crossed_polariser_shift')
  expect((await evenfield('functions', 'xylophone')).code).toBe(2)
})
